using Linewright.Solids.Space;

namespace Linewright.Pictures.Images;

/// <summary>Width and height of a picture in pixels, each 1 to 16,384.</summary>
public readonly record struct PictureSize
{
    /// <summary>Sets both sides.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A side is outside 1 to 16,384.</exception>
    public PictureSize(int width, int height)
    {
        Guard.InRange(width, 1, 16384);
        Guard.InRange(height, 1, 16384);
        Width = width;
        Height = height;
    }

    /// <summary>Pixels across.</summary>
    public int Width { get; }

    /// <summary>Pixels down.</summary>
    public int Height { get; }

    /// <summary>Pixels in all.</summary>
    public int Count => Width * Height;
}
