using Linewright.Brief;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>The joint between two links, all in mm: the same at every joint of the line, clasp included.</summary>
/// <remarks>
/// The eye must pass under the pavilions of two neighbouring stones and may not reach below the skin. Those two
/// conditions, not taste, fix how high the stone stands: the axis lies just over the eye's outer radius, and the
/// culet is raised until the pavilion clears the eye. Derivation: docs/notes/hinge-room.md.
/// </remarks>
public sealed record HingeForm
{
    // The eye rounds off at the skin: without this the skin would feel an edge. Common practice.
    private const double SkinClearMm = 0.03;

    // Light, brush and the setter's flux must pass between eye and stone. Common practice: 0.05 to 0.10.
    private const double StoneClearMm = 0.08;

    /// <summary>Eye over bar, or pinned; never auto.</summary>
    public required HingeKind Kind { get; init; }

    /// <summary>Diameter of the bar or the pin.</summary>
    public required double BarMm { get; init; }

    /// <summary>Diameter of the eye's hole.</summary>
    public required double HoleMm { get; init; }

    /// <summary>Outer radius of the eye.</summary>
    public required double EyeRadiusMm { get; init; }

    /// <summary>Width of the eye across the line.</summary>
    public required double EyeWidthMm { get; init; }

    /// <summary>Outer radius of a cheek about the axis.</summary>
    public required double CheekRadiusMm { get; init; }

    /// <summary>Thickness of a cheek across the line.</summary>
    public required double CheekMm { get; init; }

    /// <summary>Gap between eye and cheek, each side.</summary>
    public required double SideClearanceMm { get; init; }

    /// <summary>Gap round what moves in a window.</summary>
    public required double ReliefMm { get; init; }

    /// <summary>Height of the axis over the skin.</summary>
    public required double HeightMm { get; init; }

    /// <summary>Height of the culet over the skin that this joint needs.</summary>
    public required double CuletMm { get; init; }

    /// <summary>Radial play of the bar in its eye.</summary>
    public double PlayMm => (HoleMm - BarMm) / 2;

    /// <summary>The shortest pitch at which a link's own eye stays clear of the window for its neighbour's.</summary>
    public double LeastPitchMm => LeastPitch(EyeRadiusMm, PlayMm, ReliefMm);

    /// <summary>Inner face of a cheek, from the middle of the line.</summary>
    public double CheekInnerMm => EyeWidthMm / 2 + SideClearanceMm;

    /// <summary>Outer face of a cheek, from the middle of the line.</summary>
    public double CheekOuterMm => CheekInnerMm + CheekMm;

    /// <summary>Derives the joint for the line, choosing its kind by the room where the brief leaves it open.</summary>
    public static HingeForm Derive(LineSpec spec)
    {
        if (spec.Hinge != HingeKind.Auto)
        {
            return Derive(spec, spec.Hinge);
        }

        // Trade height of a link: 0.68 d + 0.9, with up to half a millimetre more for the wearer to accept.
        // Source: height rule, common practice; the half millimetre: Assumed, because it keeps eyes over bars from 2.5 mm up.
        var cast = Derive(spec, HingeKind.EyeOverBar);
        var height = cast.CuletMm + spec.Stone.DepthMm;
        return height <= 0.68 * spec.Stone.DiameterMm + 1.4 ? cast : Derive(spec, HingeKind.PinnedKnuckles);
    }

    private static HingeForm Derive(LineSpec spec, HingeKind kind)
    {
        var d = spec.Stone.DiameterMm;

        // A cast bar has a least diameter in each metal; a drawn wire may be thinner. Common practice: 0.7 to 0.8 for 3 mm
        // stones. The rest follows from a pull of 50 N across the eye: see the strength check.
        var bar = spec.BarMm ?? (kind == HingeKind.EyeOverBar
            ? Math.Max(spec.CastBarLimitMm, 0.275 * d)
            : Math.Clamp(0.5 + 0.1 * d, 0.65, 0.9));
        // What the joint must run free by after assembly. Common practice: 0.05 to 0.10 on the diameter; a closed and
        // welded eye scatters more than a reamed hole on drawn wire.
        var hole = bar + (spec.DiametralClearanceMm ?? (kind == HingeKind.EyeOverBar ? 0.09 : 0.065));
        var wall = spec.EyeWallMm ?? Math.Max(spec.KnuckleLimitMm + 0.04, 0.13 * d);
        var eye = hole / 2 + wall;
        var cheek = spec.CheekMm ?? Math.Max(spec.KnuckleLimitMm + 0.05, 0.15 * d);

        // A pinned cheek has the pin's hole and needs the wall round it; a cast cheek is one with its bar.
        var cheekRadius = kind == HingeKind.PinnedKnuckles ? eye : bar / 2 + 0.09;
        var height = eye + SkinClearMm;
        return new HingeForm
        {
            Kind = kind,
            BarMm = bar,
            HoleMm = hole,
            EyeRadiusMm = eye,
            EyeWidthMm = spec.EyeWidthMm ?? Math.Max(1.0, 0.45 * d),
            CheekRadiusMm = Math.Min(cheekRadius, eye),
            CheekMm = cheek,
            SideClearanceMm = spec.SideClearanceMm,
            ReliefMm = spec.ReliefMm,
            HeightMm = height,
            CuletMm = CuletFor(spec, eye, height, LeastPitch(eye, (hole - bar) / 2, spec.ReliefMm)),
        };
    }

    private static double LeastPitch(double eyeRadius, double play, double relief) => 2 * (eyeRadius + play) + relief;

    /// <summary>The lowest culet at which the pavilion clears the eye at the closest pitch.</summary>
    private static double CuletFor(LineSpec spec, double eyeRadius, double axisHeight, double leastPitch)
    {
        var half = Math.Max(spec.Stone.DiameterMm + spec.GapMinMm, leastPitch) / 2;
        double low = spec.CuletClearanceMm, high = axisHeight + eyeRadius + spec.Stone.DiameterMm;
        bool Clears(double culet)
        {
            var axis = new Vec3(half, 0, axisHeight - culet + spec.Stone.CuletHeightMm);
            return spec.Stone.Body.ExactDistance(axis) >= eyeRadius + StoneClearMm;
        }

        if (Clears(low))
        {
            return low;
        }

        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Clears(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }
}
