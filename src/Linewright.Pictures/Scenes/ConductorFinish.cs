using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>A metal surface: what it is made of and how it was polished.</summary>
/// <remarks>
/// Roughness is the width of the slopes of the microfacets (GGX): 0.02 is a mirror polish, 0.08 a bright hand polish,
/// 0.2 satin, 0.35 matt. Polish lines scatter light across themselves, so the roughness across is the larger one.
/// Assumed: no film, no tarnish; multiple bounces between microfacets are given back by a factor, not traced.
/// </remarks>
/// <param name="Metal">Complex index.</param>
/// <param name="RoughAlong">Along the polish lines, 0.005 to 1.</param>
/// <param name="RoughAcross">Across the polish lines, 0.005 to 1.</param>
/// <param name="Lines">Direction of the lines in the part's frame, laid onto the surface.</param>
/// <param name="Waviness">How far the lines waver, 0 (ruled) to 1, by a smooth rule in the part's frame.</param>
public sealed record ConductorFinish(ComplexIndex Metal, double RoughAlong, double RoughAcross, Vec3 Lines, double Waviness = 0)
{
    /// <summary>The same roughness in every direction.</summary>
    public static ConductorFinish Even(ComplexIndex metal, double roughness) => new(metal, roughness, roughness, Vec3.UnitX);

    /// <summary>A jeweller's fine polish: bright, with a breath of lines along x.</summary>
    public static ConductorFinish Polished(ComplexIndex metal) => new(metal, 0.035, 0.07, Vec3.UnitX, 0.3);

    internal void Check()
    {
        Guard.InRange(RoughAlong, 0.005, 1);
        Guard.InRange(RoughAcross, 0.005, 1);
        Guard.Positive(Lines.Length);
        Guard.InRange(Waviness, 0, 1);
    }
}
