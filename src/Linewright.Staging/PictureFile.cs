using Linewright.Pictures.Images;

namespace Linewright.Staging;

/// <summary>Front door: writes pictures. PNG is developed for a screen, PFM keeps the light as it was measured.</summary>
public static class PictureFile
{
    private static readonly Development Usual = new();

    /// <summary>True where a file name ends in a kind of picture that can be written.</summary>
    public static bool IsKnown(string name) => IsPng(name) || IsPfm(name);

    /// <summary>Writes a picture in the kind that the name ends in.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="name">Ends in .png or .pfm.</param>
    /// <param name="picture">The picture.</param>
    /// <param name="bits">8 or 16 a channel; PFM always has 32.</param>
    public static void Write(Stream stream, string name, Picture picture, int bits)
    {
        if (IsPfm(name))
        {
            PfmWriter.Write(stream, picture);
            return;
        }

        PngWriter.Write(stream, picture, Usual, bits);
    }

    /// <summary>Writes a picture for looking at: PNG of at most so many pixels, each the mean of a square of the picture's.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="picture">The picture, finished or growing.</param>
    /// <param name="mostPixels">Pixels that may be developed, 1 or more: what a look may cost.</param>
    public static void WriteView(Stream stream, Picture picture, int mostPixels)
    {
        ArgumentNullException.ThrowIfNull(picture);
        PngWriter.Write(stream, Reduction.ToAtMost(picture, mostPixels), Usual);
    }

    /// <summary>True for linear light.</summary>
    public static bool IsPfm(string name) => name.EndsWith(".pfm", StringComparison.OrdinalIgnoreCase);

    private static bool IsPng(string name) => name.EndsWith(".png", StringComparison.OrdinalIgnoreCase);
}
