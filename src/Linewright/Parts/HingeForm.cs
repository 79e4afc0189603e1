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
    private const double StoneClearMm = 0.09;

    // What an eye over a bar may be higher, the stones wider apart, or its wag over what feels firm, before pins are the
    // better joint. Assumed.
    private const double HigherMm = 0.45, WiderMm = 0.09, MostWag = 1.6;

    // A collar's wire, what the window's edges take of it, and its distance from the pavilion.
    private const double CollarSpareMm = LinkForm.CutMm / 2 + LinkForm.RailStoneClearMm;

    // What the window for the neighbour's eye leaves of the collar across the line. It runs round and leans, so that its wall
    // is a tenth more. Felt on solids of 2.5 mm stones.
    private const double CollarBesideMm = 0.5;

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

    /// <summary>Thinnest wire that is drawn beside the joint's windows.</summary>
    public required double WireMm { get; init; }

    /// <summary>Radial play of the bar in its eye.</summary>
    public double PlayMm => (HoleMm - BarMm) / 2;

    /// <summary>Radius of the window that the next link's eye sweeps.</summary>
    public double EyeSweepMm => EyeRadiusMm + PlayMm + ReliefMm;

    /// <summary>Radius of the window that the next link's cheeks sweep.</summary>
    public double CheekSweepMm => CheekRadiusMm + PlayMm + ReliefMm;

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

        // An eye over a bar is the simpler and the stronger joint. It is left only where it would part the stones, lift them
        // over what is usual and far over what pins need, or be too narrow between what is left of the collar. Assumed.
        HingeForm cast = Derive(spec, HingeKind.EyeOverBar), pinned = Derive(spec, HingeKind.PinnedKnuckles);
        var height = Math.Max(HeightRule.MostMm(spec.Stone.DiameterMm) - spec.Stone.DepthMm, pinned.CuletMm + HigherMm);
        var parts = cast.LeastPitchMm > Math.Max(spec.Stone.DiameterMm + spec.GapMinMm, pinned.LeastPitchMm) + WiderMm;
        var wags = MostWidthMm(spec, cast.Kind) * MostWag < HingeRule.FirmWidthMm(cast.HoleMm - cast.BarMm, cast.Kind);
        return cast.CuletMm <= height && !parts && !wags ? cast : pinned;
    }

    private static HingeForm Derive(LineSpec spec, HingeKind kind)
    {
        var d = spec.Stone.DiameterMm;

        // What the joint must run free by after assembly. Common practice: 0.05 to 0.10 on the diameter; a closed and
        // welded eye scatters more than a reamed hole on drawn wire.
        var isCast = kind == HingeKind.EyeOverBar;
        var clearance = spec.DiametralClearanceMm ?? (isCast ? 0.09 : 0.065);
        var wall = spec.EyeWallMm ?? Math.Max(spec.DrawnKnuckleMm + 0.05, 0.13 * d);
        double slimWidth = Math.Max(1.0, 0.45 * d), firmWidth = Math.Max(slimWidth, Math.Min(HingeRule.FirmWidthMm(clearance, kind), MostWidthMm(spec, kind)));

        // A cast bar has a least diameter in each metal; a drawn wire may be thinner. Common practice: 0.7 to 0.8 for 3 mm
        // stones. The wider the eye, the thicker the bar that bears a pull across it.
        var slimBar = isCast ? Math.Max(spec.CastBarLimitMm + spec.WallReserveMm, 0.275 * d) : Math.Clamp(0.5 + 0.1 * d, 0.65, 0.9);
        var width = spec.EyeWidthMm ?? firmWidth;
        var bar = spec.BarMm ?? Math.Max(
            slimBar, HingeRule.StrongBarMm(width + 2 * spec.SideClearanceMm, isCast ? spec.CastYieldMPa : spec.DrawnYieldMPa));

        // Pins that would part the stones, thick as they are, stay as slim as the trade makes them, and wag a little.
        if (!isCast && LeastPitch((bar + clearance) / 2 + wall, clearance / 2, spec.ReliefMm) > d + spec.GapMinMm)
        {
            (width, bar) = (spec.EyeWidthMm ?? slimWidth, spec.BarMm ?? slimBar);
        }

        var hole = bar + clearance;
        var eye = hole / 2 + wall;
        var cheek = spec.CheekMm ?? Math.Max(spec.DrawnKnuckleMm + 0.05, 0.15 * d);

        // A pinned cheek has the pin's hole and needs the wall round it; a cast cheek is one with its bar.
        var cheekRadius = kind == HingeKind.PinnedKnuckles ? eye : bar / 2 + 0.09;
        var height = eye + SkinClearMm;

        // Cheeks as large as the eye sweep through all that is under the girdle: the collar must find room above them.
        var play = (hole - bar) / 2;
        double eyeSweep = eye + play + spec.ReliefMm, cheekSweep = Math.Min(cheekRadius, eye) + play + spec.ReliefMm;
        var room = Math.Max(eye + StoneClearMm, kind == HingeKind.PinnedKnuckles ? cheekSweep + spec.DrawnWireMm + CollarSpareMm : 0);
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
            WireMm = spec.DrawnWireMm,
            CuletMm = CuletFor(spec, room, height, LeastPitch(eye, play, spec.ReliefMm), eyeSweep, cheekSweep, width / 2),
        };
    }

    /// <summary>The widest eye whose window leaves the collar a wall on either side; no limit where cheeks part it anyway.</summary>
    internal static double MostWidthMm(LineSpec spec, HingeKind kind) => kind == HingeKind.EyeOverBar
        ? 2 * (LinkForm.CollarOuterRatio * spec.Stone.DiameterMm - spec.SideClearanceMm - CollarBesideMm - spec.WallReserveMm)
        : double.PositiveInfinity;

    private static double LeastPitch(double eyeRadius, double play, double relief) => 2 * (eyeRadius + play) + relief + LinkForm.CutMm / 2;

    /// <summary>The lowest culet at which the pavilion keeps out of a round about the axis, at the closest pitch.</summary>
    /// <param name="spec">The stone.</param>
    /// <param name="room">Radius of the round.</param>
    /// <param name="axisHeight">Height of the axis over the skin.</param>
    /// <param name="leastPitch">The shortest pitch that the joint allows.</param>
    /// <param name="eyeSweep">Radius of the window for the neighbour's eye.</param>
    /// <param name="cheekSweep">Radius of the window for the neighbour's cheeks.</param>
    /// <param name="beside">Where the two windows meet across the line.</param>
    private static double CuletFor(LineSpec spec, double room, double axisHeight, double leastPitch, double eyeSweep, double cheekSweep, double beside)
    {
        var half = Math.Max(spec.Stone.DiameterMm + spec.GapMinMm, leastPitch) / 2;

        // Over the cut between two windows that all but meet, which is where the eye hangs on the cheeks, a wire is left
        // below the pavilion too.
        var cut = PartedAbove(2 * half, eyeSweep, cheekSweep, spec.DrawnWireMm);
        var wire = spec.DrawnWireMm + LinkForm.CutMm + LinkForm.RailStoneClearMm;
        double low = spec.CuletClearanceMm, high = axisHeight + room + spec.Stone.DiameterMm;
        bool Clears(double culet)
        {
            double Left(double x, double y, double z)
                => spec.Stone.Body.ExactDistance(new Vec3(x, y, z - culet + spec.Stone.CuletHeightMm));
            return Left(half, 0, axisHeight) >= room
                && (cut <= 0 || Left(0, beside, axisHeight + cut) >= wire);
        }

        if (Clears(low))
        {
            return low;
        }

        // To a nanometre.
        while (high - low > 1e-6)
        {
            var middle = (low + high) / 2;
            (low, high) = Clears(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    /// <summary>How far over the axis a link's two windows have parted by a wire; 0 where they never come nearer.</summary>
    /// <param name="pitch">Between the joints at both ends of the link.</param>
    /// <param name="eyeSweep">Radius of the window for the neighbour's eye.</param>
    /// <param name="cheekSweep">Radius of the window for the neighbour's cheeks.</param>
    /// <param name="wire">Thinnest wire to leave.</param>
    internal static double PartedAbove(double pitch, double eyeSweep, double cheekSweep, double wire)
    {
        var web = wire + LinkForm.CutMm;
        static double Reach(double radius, double rise) => Math.Sqrt(Math.Max(0, radius * radius - rise * rise));
        if (pitch - eyeSweep - cheekSweep >= web)
        {
            return 0;
        }

        double low = 0, high = Math.Max(eyeSweep, cheekSweep);
        for (var i = 0; i < 50; i++)
        {
            var rise = (low + high) / 2;
            var left = pitch - Reach(eyeSweep, rise) - Reach(cheekSweep, rise);
            (low, high) = left < web ? (rise, high) : (low, rise);
        }

        return high;
    }
}
