using System.Collections.Immutable;
using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>Light from everywhere else: a smooth gradient from nadir over horizon to zenith, and strips upon it.</summary>
/// <param name="Zenith">Radiance straight up, as a multiple of white.</param>
/// <param name="Horizon">Radiance all round.</param>
/// <param name="Nadir">Radiance straight down (seen only where there is no ground).</param>
/// <param name="Strips">Bright and dark rectangles.</param>
/// <param name="Colour">One spectrum for all of it; scaled to luminance 1.</param>
/// <param name="Seen">False: a camera ray that meets nothing leaves the pixel transparent.</param>
public sealed record Surroundings(
    double Zenith, double Horizon, double Nadir, ImmutableArray<LightStrip> Strips, Spectrum Colour, bool Seen = true)
{
    /// <summary>The same radiance from everywhere, daylight.</summary>
    public static Surroundings Even(double radiance) => new(radiance, radiance, radiance, [], Illuminant.D65);

    internal void Check()
    {
        Guard.InRange(Zenith, 0, 1e4);
        Guard.InRange(Horizon, 0, 1e4);
        Guard.InRange(Nadir, 0, 1e4);
        foreach (var strip in Strips)
        {
            strip.Check();
        }
    }
}
