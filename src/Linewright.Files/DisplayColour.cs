using System.Globalization;

namespace Linewright.Files;

/// <summary>Turns a material's linear colour into the coded colour of screens and web pages.</summary>
internal static class DisplayColour
{
    /// <summary>"#RRGGBB", each channel coded for an sRGB screen.</summary>
    public static string Hex(FileMaterial material)
        => string.Create(CultureInfo.InvariantCulture, $"#{Coded(material.Red):X2}{Coded(material.Green):X2}{Coded(material.Blue):X2}");

    // Standard: IEC 61966-2-1 (1999), transfer function of the sRGB colour space.
    private static int Coded(double linear)
    {
        var coded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.Pow(linear, 1 / 2.4) - 0.055;
        return (int)Math.Round(coded * 255, MidpointRounding.AwayFromZero);
    }
}
