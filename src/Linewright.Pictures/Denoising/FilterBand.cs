namespace Linewright.Pictures.Denoising;

/// <summary>Some rows of a picture and what lies round them, one plane a quantity, for the vector unit.</summary>
internal sealed class FilterBand
{
    /// <summary>Pixels on every side that are read but not written: the search, the patch, the neighbours that tell a pixel's variance.</summary>
    public const int Margin = JointFilter.Radius + 2;

    /// <summary>Key of what lies outside the picture: it matches nothing.</summary>
    public const int Outside = int.MinValue;

    /// <summary>Key of pixels in which everything runs into everything, because the lens is not sharp there or parts are smaller than a pixel.</summary>
    public const int Blurred = int.MinValue + 1;

    /// <summary>Mixed pixels among the nine about one that make it blurred, and mixed ones beside it: an edge in focus is a line of them and stays below.</summary>
    private const int BlurredFrom = 6;

    /// <summary>Square of the mean normal's length under which a pixel counts as mixed. Calculated: two facets that meet at 16 degrees, half and half.</summary>
    private const float Mixed = 0.98f;

    /// <summary>
    /// Weight of the halves' difference as a measure of noise, on the grey axis and on the two of colour, beside the samples' spread of luminance.
    /// Measured: least error on ten diamonds against 4,096 samples; the samples' own spread on each axis did worse.
    /// </summary>
    private const float GreyShare = 0.7f;

    private const float ColourShare = 0.3f;

    private const float OverRoot2 = 0.70710678f;
    private const float OverRoot3 = 0.57735027f;
    private const float OverRoot6 = 0.40824829f;

    private readonly bool[] mixed;
    private readonly bool[] core;

    public FilterBand(int width, int rows)
    {
        // Room for a whole vector past the last pixel.
        Stride = (width + 2 * Margin + 15) / 8 * 8;
        Rows = rows + 2 * Margin;
        First = Planes(3);
        Second = Planes(3);
        Normal = Planes(3);
        Albedo = Planes(3);
        Alpha = new float[Stride * Rows];
        mixed = new bool[Stride * Rows];
        core = new bool[Stride * Rows];
        Variance = Planes(3);
        Luminance = new float[Stride * Rows];
        Key = new int[Stride * Rows];
    }

    public int Stride { get; }

    public int Rows { get; }

    /// <summary>Grey, warm and lush of the first half, over the albedo.</summary>
    public float[][] First { get; }

    /// <summary>The same of the other half.</summary>
    public float[][] Second { get; }

    public float[][] Normal { get; }

    /// <summary>What the light was divided by, and is multiplied with in the end.</summary>
    public float[][] Albedo { get; }

    public float[] Alpha { get; }

    /// <summary>Variance of a half on each axis.</summary>
    public float[][] Variance { get; }

    /// <summary>Variance of a half's luminance.</summary>
    private float[] Luminance { get; }

    public int[] Key { get; }

    /// <summary>Fills all rows from a picture, the first at <paramref name="top"/> less the margin.</summary>
    public void Fill(int top, int width, int height, Func<int, int, FilterPixel> pixel)
    {
        Array.Fill(Key, Outside);
        Array.Clear(mixed);
        for (var row = 0; row < Rows; row++)
        {
            var y = top - Margin + row;
            for (var column = 0; column < Stride; column++)
            {
                var x = column - Margin;
                var at = row * Stride + column;
                if (x < 0 || x >= width || y < 0 || y >= height)
                {
                    First[0][at] = First[1][at] = First[2][at] = Second[0][at] = Second[1][at] = Second[2][at] = 0;
                    Luminance[at] = Alpha[at] = 0;
                    continue;
                }

                Put(at, pixel(x, y));
            }
        }

        Blur(width);
        for (var at = 0; at < Key.Length; at++)
        {
            (First[0][at], First[1][at], First[2][at]) = Axes(First[0][at], First[1][at], First[2][at]);
            (Second[0][at], Second[1][at], Second[2][at]) = Axes(Second[0][at], Second[1][at], Second[2][at]);
        }

        for (var row = 1; row < Rows - 1; row++)
        {
            for (var at = row * Stride + 1; at < (row + 1) * Stride - 1; at++)
            {
                Spread(at);
            }
        }
    }

    /// <summary>Noise on each axis: how far the halves of a pixel and of its kin round it lie apart. A single wavelength's spark is dim but loud in colour.</summary>
    private void Spread(int at)
    {
        float grey = 0, warm = 0, lush = 0;
        var count = 0;
        for (var row = at - Stride; row <= at + Stride; row += Stride)
        {
            for (var k = row - 1; k <= row + 1; k++)
            {
                if (Key[k] == Key[at])
                {
                    float g = First[0][k] - Second[0][k], w = First[1][k] - Second[1][k], l = First[2][k] - Second[2][k];
                    grey += g * g;
                    warm += w * w;
                    lush += l * l;
                    count++;
                }
            }
        }

        // The difference of two halves has twice the variance of one.
        var each = 0.5f / count;
        Variance[0][at] = MathF.Max(Luminance[at], GreyShare * grey * each);
        Variance[1][at] = MathF.Max(Luminance[at], ColourShare * warm * each);
        Variance[2][at] = MathF.Max(Luminance[at], ColourShare * lush * each);
    }

    private void Put(int at, in FilterPixel p)
    {
        float r = Over(p.Albedo.Red), g = Over(p.Albedo.Green), b = Over(p.Albedo.Blue);
        (Albedo[0][at], Albedo[1][at], Albedo[2][at]) = (1 / r, 1 / g, 1 / b);
        (First[0][at], First[1][at], First[2][at]) = (p.First.Red * r, p.First.Green * g, p.First.Blue * b);
        (Second[0][at], Second[1][at], Second[2][at]) = (p.Second.Red * r, p.Second.Green * g, p.Second.Blue * b);
        Alpha[at] = p.Alpha;
        var mean = (r + g + b) / 3;
        Luminance[at] = p.Variance * mean * mean;
        (Normal[0][at], Normal[1][at], Normal[2][at]) = p.Normal;
        var (x, y, z) = p.Normal;
        var length = x * x + y * y + z * z;
        mixed[at] = length < Mixed && (p.Facet != 0 || length > 0);

        // Where surfaces meet within a pixel, only pixels with much the same mixture are its kin.
        Key[at] = mixed[at]
            ? -1 - (Step(x) + 16 * Step(y) + 256 * Step(z) + 4096 * (p.Facet & 0x3FFFF))
            : p.Facet;
    }

    /// <summary>
    /// Pixels that lie among mixed ones are all kin: there is no edge to keep, and guides are a few samples' chance. Only their
    /// patches decide.
    /// </summary>
    private void Blur(int width)
    {
        for (var at = Stride + 1; at < core.Length - Stride - 1; at++)
        {
            core[at] = mixed[at] && Around(mixed, at) >= BlurredFrom;
        }

        for (var row = 1; row < Rows - 1; row++)
        {
            for (var at = row * Stride + Margin; at < row * Stride + Margin + width; at++)
            {
                if (mixed[at] && Around(core, at) > 0)
                {
                    Key[at] = Blurred;
                    Undivide(at);
                }
            }
        }
    }

    /// <summary>How many of the nine pixels about one are so.</summary>
    private int Around(bool[] are, int at) => Three(are, at - Stride) + Three(are, at) + Three(are, at + Stride);

    private static int Three(bool[] are, int at) => (are[at - 1] ? 1 : 0) + (are[at] ? 1 : 0) + (are[at + 1] ? 1 : 0);

    private void Undivide(int at)
    {
        var mean = 3 / (1 / Albedo[0][at] + 1 / Albedo[1][at] + 1 / Albedo[2][at]);
        Luminance[at] *= mean * mean;
        for (var c = 0; c < 3; c++)
        {
            First[c][at] *= Albedo[c][at];
            Second[c][at] *= Albedo[c][at];
            Albedo[c][at] = 1;
            Normal[c][at] = 0;
        }
    }

    /// <summary>A colour on three axes at right angles: grey, from blue to red, from green to both.</summary>
    private static (float Grey, float Warm, float Lush) Axes(float r, float g, float b)
        => ((r + g + b) * OverRoot3, (r - b) * OverRoot2, (r - 2 * g + b) * OverRoot6);

    /// <summary>Back from the axes.</summary>
    public static (float Red, float Green, float Blue) Colour(float grey, float warm, float lush)
        => (grey * OverRoot3 + warm * OverRoot2 + lush * OverRoot6, grey * OverRoot3 - 2 * lush * OverRoot6, grey * OverRoot3 - warm * OverRoot2 + lush * OverRoot6);

    /// <summary>One over an albedo, held away from zero.</summary>
    private static float Over(float albedo) => 1 / MathF.Max(albedo, 0.02f);

    private static int Step(float v) => Math.Clamp((int)((v + 1) * 7.5f), 0, 15);

    private float[][] Planes(int count) => [.. Enumerable.Range(0, count).Select(_ => new float[Stride * Rows])];
}
