using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Images;

/// <summary>From linear light to what a screen shows: exposure, white balance, shoulder, gamut, sRGB.</summary>
/// <remarks>
/// The shoulder leaves everything up to <see cref="Knee"/> as it is and bends the rest towards 1, so that bright reflections
/// keep their form. Colours outside sRGB are drawn towards grey of the same luminance just as far as needed, instead of
/// being cut channel by channel, which would turn a violet flash blue.
/// </remarks>
/// <param name="Exposure">Factor on all light, above 0.</param>
/// <param name="Knee">Where the shoulder begins, 0.1 to 1; 1 cuts hard.</param>
/// <param name="White">Light that shall look white; null leaves colours as they are (daylight is white).</param>
public sealed record Development(double Exposure = 1, double Knee = 0.75, Spectrum? White = null)
{
    /// <summary>Nothing but the curve of sRGB: for comparing pictures.</summary>
    public static Development Plain { get; } = new(1, 1);

    /// <summary>Red, green, blue and alpha of every pixel, 0 to 1, encoded for sRGB; alpha not premultiplied.</summary>
    public float[] Develop(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var result = new float[4 * picture.Size.Count];
        Develop(picture, 0, picture.Size.Height, result);
        return result;
    }

    /// <summary>The same for some rows, so that a large picture need not lie there a second time.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="first">The first row.</param>
    /// <param name="rows">How many.</param>
    /// <param name="result">Room for four numbers a pixel of those rows, or more.</param>
    internal void Develop(Picture picture, int first, int rows, float[] result)
    {
        Guard.Positive(Exposure);
        Guard.InRange(Knee, 0.1, 1);
        var balance = Balance();
        var width = picture.Size.Width;
        Parallel.For(first, first + rows, new ParallelOptions { TaskScheduler = TaskScheduler.Current }, y =>
        {
            for (var i = y * width; i < (y + 1) * width; i++)
            {
                var to = 4 * (i - first * width);
                var alpha = Math.Clamp(picture.Alpha[i], 0, 1);
                var scale = Exposure / Math.Max(alpha, 1e-3f);
                double r = picture.Colour[3 * i] * scale, g = picture.Colour[3 * i + 1] * scale, b = picture.Colour[3 * i + 2] * scale;
                (r, g, b) = (
                    balance[0] * r + balance[1] * g + balance[2] * b,
                    balance[3] * r + balance[4] * g + balance[5] * b,
                    balance[6] * r + balance[7] * g + balance[8] * b);
                (r, g, b) = IntoGamut(r, g, b);
                result[to] = Encode(r);
                result[to + 1] = Encode(g);
                result[to + 2] = Encode(b);
                result[to + 3] = alpha;
            }
        });
    }

    /// <summary>The curve of sRGB. Source: IEC 61966-2-1.</summary>
    public static float Encode(double linear)
    {
        var v = Math.Clamp(linear, 0, 1);
        return (float)(v <= 0.0031308 ? 12.92 * v : 1.055 * Math.Pow(v, 1 / 2.4) - 0.055);
    }

    private (double Red, double Green, double Blue) IntoGamut(double r, double g, double b)
    {
        var luminance = Math.Max(0, 0.2126 * r + 0.7152 * g + 0.0722 * b);
        var low = Math.Min(r, Math.Min(g, b));
        if (low < 0)
        {
            var keep = luminance / Math.Max(luminance - low, 1e-12);
            (r, g, b) = (luminance + (r - luminance) * keep, luminance + (g - luminance) * keep, luminance + (b - luminance) * keep);
        }

        if (Knee >= 1)
        {
            return (r, g, b);
        }

        // The brightest channel goes over the shoulder and takes the others with it; very bright colours pale a little.
        var high = Math.Max(r, Math.Max(g, b));
        if (high <= Knee)
        {
            return (r, g, b);
        }

        var bent = Knee + (1 - Knee) * (1 - Math.Exp((Knee - high) / (1 - Knee)));
        var pale = 1 - Math.Exp(-0.12 * Math.Max(0, high - 1));
        var ratio = bent / high;
        return (r * ratio + (bent - r * ratio) * pale, g * ratio + (bent - g * ratio) * pale, b * ratio + (bent - b * ratio) * pale);
    }

    /// <summary>Matrix on linear sRGB that turns the chosen white into 1, 1, 1.</summary>
    /// <remarks>Scaling in linear sRGB's own channels (von Kries, 1902); exact for the white itself. Assumed: whites of studio lights lie close enough for it.</remarks>
    private double[] Balance()
    {
        if (White is null)
        {
            return [1, 0, 0, 0, 1, 0, 0, 0, 1];
        }

        var sum = Observer.Sum(White);
        var (r, g, b) = new Tristimulus(sum.X / sum.Y, 1, sum.Z / sum.Y).ToLinear();
        return [1 / Math.Max(r, 0.05), 0, 0, 0, 1 / Math.Max(g, 0.05), 0, 0, 0, 1 / Math.Max(b, 0.05)];
    }
}
