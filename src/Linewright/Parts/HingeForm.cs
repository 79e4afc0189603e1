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
    private const double StoneClearMm = 0.09;

    // What an eye over a bar may be higher, or the stones wider apart, before pins are the better joint. Assumed.
    private const double HigherMm = 0.45, WiderMm = 0.1;

    // A collar's wire between pavilion and cheeks; further out, where it bears the claws, the pavilion leaves it more. Calculated.
    private const double CollarRoomMm = 0.3;

    /// <summary>Eye over bar, or pinned.</summary>
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
        if (spec.Hinge is { } kind)
        {
            return Derive(spec, kind);
        }

        // An eye over a bar is the simpler and the stronger joint. It is left only where it would part the stones, or lift
        // them over the trade's height of a link, 0.68 d + 0.9 with half a millimetre for the wearer to accept, and far over
        // what pins need. Source: height rule, common practice; the rest: Assumed.
        HingeForm cast = Derive(spec, HingeKind.EyeOverBar), pinned = Derive(spec, HingeKind.PinnedKnuckles);
        var height = Math.Max(0.68 * spec.Stone.DiameterMm + 1.4 - spec.Stone.DepthMm, pinned.CuletMm + HigherMm);
        var parts = cast.LeastPitchMm > Math.Max(spec.Stone.DiameterMm + spec.GapMinMm, pinned.LeastPitchMm) + WiderMm;
        return cast.CuletMm <= height && !parts ? cast : pinned;
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
        var wall = spec.EyeWallMm ?? Math.Max(spec.KnuckleLimitMm + 0.05, 0.13 * d);
        var eye = hole / 2 + wall;
        var cheek = spec.CheekMm ?? Math.Max(spec.KnuckleLimitMm + 0.05, 0.15 * d);

        // A pinned cheek has the pin's hole and needs the wall round it; a cast cheek is one with its bar.
        var cheekRadius = kind == HingeKind.PinnedKnuckles ? eye : bar / 2 + 0.09;
        var height = eye + SkinClearMm;

        // Cheeks as large as the eye sweep through all that is under the girdle: the collar must find room above them.
        var play = (hole - bar) / 2;
        var sweep = kind == HingeKind.PinnedKnuckles ? eye + play + spec.ReliefMm : 0;
        var room = Math.Max(eye + StoneClearMm, sweep > 0 ? sweep + CollarRoomMm : 0);
        var width = spec.EyeWidthMm ?? Math.Max(1.0, 0.45 * d);
        return new HingeForm
        {
            Kind = kind,
            BarMm = bar,
            HoleMm = hole,
            EyeRadiusMm = eye,
            EyeWidthMm = width,
            CheekRadiusMm = Math.Min(cheekRadius, eye),
            CheekMm = cheek,
            SideClearanceMm = spec.SideClearanceMm,
            ReliefMm = spec.ReliefMm,
            HeightMm = height,
            CuletMm = CuletFor(spec, room, height, LeastPitch(eye, play, spec.ReliefMm), sweep, width / 2),
        };
    }

    private static double LeastPitch(double eyeRadius, double play, double relief) => 2 * (eyeRadius + play) + relief;

    /// <summary>The lowest culet at which the pavilion keeps out of a round about the axis, at the closest pitch.</summary>
    /// <param name="spec">The stone.</param>
    /// <param name="room">Radius of the round.</param>
    /// <param name="axisHeight">Height of the axis over the skin.</param>
    /// <param name="leastPitch">The shortest pitch that the joint allows.</param>
    /// <param name="sweep">Pinned: what either neighbour sweeps about its axis; 0 where only the eye's window is large.</param>
    /// <param name="beside">Where the two windows meet across the line.</param>
    private static double CuletFor(LineSpec spec, double room, double axisHeight, double leastPitch, double sweep, double beside)
    {
        var half = Math.Max(spec.Stone.DiameterMm + spec.GapMinMm, leastPitch) / 2;

        // Between two large windows the link is cut through up to where they have parted by a wire: over that cut, which
        // is what holds the eye to the cheeks, a wire must be left below the pavilion too.
        var apart = half - (LinkForm.WireMm + LinkForm.CutMm) / 2;
        var bridge = axisHeight + Math.Sqrt(Math.Max(0, sweep * sweep - apart * apart));
        double low = spec.CuletClearanceMm, high = axisHeight + room + spec.Stone.DiameterMm;
        bool Clears(double culet)
        {
            double Left(double x, double y, double z)
                => spec.Stone.Body.ExactDistance(new Vec3(x, y, z - culet + spec.Stone.CuletHeightMm));
            return Left(half, 0, axisHeight) >= room
                && (sweep <= apart || Left(0, beside, bridge) >= LinkForm.WireMm + LinkForm.RailStoneClearMm);
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
