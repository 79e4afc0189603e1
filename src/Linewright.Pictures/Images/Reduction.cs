using Linewright.Solids.Space;

namespace Linewright.Pictures.Images;

/// <summary>Makes a picture smaller by a whole number: each pixel becomes the mean light of a square of pixels.</summary>
/// <remarks>Means are taken of linear light, as a coarser sensor would; at the right and lower edge of what is left of a square.</remarks>
public static class Reduction
{
    /// <summary>The picture with at most so many pixels, the same one where it has no more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than one pixel is allowed.</exception>
    public static Picture ToAtMost(Picture picture, int mostPixels)
    {
        ArgumentNullException.ThrowIfNull(picture);
        Guard.InRange(mostPixels, 1, int.MaxValue);
        var by = 1;
        while (Smaller(picture.Size, by) is var (width, height) && (long)width * height > mostPixels)
        {
            by++;
        }

        return by == 1 ? picture : By(picture, by);
    }

    private static (int Width, int Height) Smaller(PictureSize size, int by) => ((size.Width + by - 1) / by, (size.Height + by - 1) / by);

    private static Picture By(Picture picture, int by)
    {
        var (width, height) = Smaller(picture.Size, by);
        var size = new PictureSize(width, height);
        var colour = new float[3 * size.Count];
        var alpha = new float[size.Count];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                int right = Math.Min((x + 1) * by, picture.Size.Width), low = Math.Min((y + 1) * by, picture.Size.Height);
                var share = 1f / ((right - x * by) * (low - y * by));
                var to = y * width + x;
                for (var from = y * by * picture.Size.Width; from < low * picture.Size.Width; from += picture.Size.Width)
                {
                    for (var at = from + x * by; at < from + right; at++)
                    {
                        colour[3 * to] += share * picture.Colour[3 * at];
                        colour[3 * to + 1] += share * picture.Colour[3 * at + 1];
                        colour[3 * to + 2] += share * picture.Colour[3 * at + 2];
                        alpha[to] += share * picture.Alpha[at];
                    }
                }
            }
        }

        return new Picture(size, colour, alpha, picture.Noise, null);
    }
}
