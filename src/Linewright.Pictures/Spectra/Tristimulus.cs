namespace Linewright.Pictures.Spectra;

/// <summary>A colour as the standard observer of 1931 sees it: X, Y, Z, where Y is luminance.</summary>
public readonly record struct Tristimulus(double X, double Y, double Z)
{
    /// <summary>Chromaticity x.</summary>
    public double ChromaX => X / (X + Y + Z);

    /// <summary>Chromaticity y.</summary>
    public double ChromaY => Y / (X + Y + Z);

    /// <summary>Linear light with the primaries of sRGB; white of daylight D65 with Y = 1 becomes 1, 1, 1.</summary>
    /// <remarks>Source: IEC 61966-2-1, inverse matrix as printed in its amendment, seven digits.</remarks>
    public (double Red, double Green, double Blue) ToLinear() => (
        3.2406255 * X - 1.5372080 * Y - 0.4986286 * Z,
        -0.9689307 * X + 1.8757561 * Y + 0.0415175 * Z,
        0.0557101 * X - 0.2040211 * Y + 1.0569959 * Z);

    /// <summary>Back from linear light with the primaries of sRGB.</summary>
    /// <remarks>Source: IEC 61966-2-1.</remarks>
    public static Tristimulus FromLinear(double red, double green, double blue) => new(
        0.4124 * red + 0.3576 * green + 0.1805 * blue,
        0.2126 * red + 0.7152 * green + 0.0722 * blue,
        0.0193 * red + 0.1192 * green + 0.9505 * blue);
}
