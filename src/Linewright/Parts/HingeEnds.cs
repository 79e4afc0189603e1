using Linewright.Brief;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>The solids that make a joint, in a frame whose origin is the bar's axis in the middle of the line, taut.</summary>
/// <remarks>
/// The side with the eye lies at negative x, the side with the bar at positive x. Nothing but the two sides' own
/// rounds crosses the wedge between them, so that the wedge alone sets how far the joint turns.
/// </remarks>
internal sealed class HingeEnds(HingeForm form, double edge)
{
    // Faces that a cut will make stand this much proud before it, so that no two surfaces lie flush when they are blended.
    private const double SpareMm = 0.08;

    // A slot narrower than this does not cast open: its fin of investment breaks or is not filled round. Assumed.
    private const double SlotMm = 0.3;

    // Height of the edge where a window meets the skin. Common practice: no edge thinner than a third of a millimetre on the skin.
    private const double BluntMm = 0.35;

    /// <summary>The eye: a ring about y; as cast open to the skin side with its end hanging straight, ready to be closed.</summary>
    /// <param name="state">Which state.</param>
    /// <param name="allowance">What the metal is grown by afterwards: the side faces, which run between the cheeks, stand back by it.</param>
    public Solid Eye(PartState state, double allowance = 0)
    {
        double inner = form.HoleMm / 2, outer = form.EyeRadiusMm, width = form.EyeWidthMm - 2 * allowance;
        var rim = Math.Max(0, Math.Min(edge, Math.Min((outer - inner) / 3, form.EyeWidthMm / 4)) - allowance);
        var centre = Pose.Move(-form.PlayMm, 0, 0);
        var ring = AlongY(Shape.Cylinder(outer, width, rim)).Moved(centre);
        if (state == PartState.AsSet || form.Kind == HingeKind.PinnedKnuckles)
        {
            return ring;
        }

        // Half of the ring stays, the other half is unrolled about its neutral line.
        double middle = (inner + outer) / 2, length = Math.PI * middle;
        var upper = ring.Minus(Shape.HalfSpace(Vec3.Zero, Vec3.UnitZ).Moved(centre));
        var tail = Shape.BoxBetween(
            new Vec3(inner, -width / 2, -length), new Vec3(outer, width / 2, 0.02), rim).Moved(centre);
        return Solid.Union(upper, tail);
    }

    /// <summary>The hole in the eye; as cast with the slot through which the bar enters.</summary>
    public Solid EyeHole(PartState state)
    {
        var centre = Pose.Move(-form.PlayMm, 0, 0);
        var hole = AlongY(Shape.Cylinder(form.HoleMm / 2, form.EyeWidthMm + 1));
        if (state == PartState.AsCast && form.Kind == HingeKind.EyeOverBar)
        {
            // The way in, as deep as the tail is long; at the tail wider than the eye, so that no fin stays.
            double reach = form.HeightMm + 4, half = form.HoleMm / 2, side = form.EyeWidthMm / 2 + 0.13;
            hole = Solid.Union(
                hole,
                Shape.BoxBetween(new Vec3(-half, -side, -reach), new Vec3(half, side, 0)),
                Shape.BoxBetween(new Vec3(0, -side - 0.2, -reach), new Vec3(half, side + 0.2, 0)));
        }

        return hole.Moved(centre);
    }

    /// <summary>The rounds of the two cheeks; their inner faces are left to the eye's sweep.</summary>
    public Solid CheekRounds()
    {
        var rim = Math.Min(edge, form.CheekMm / 4);
        double low = form.CheekInnerMm - SpareMm, high = form.CheekOuterMm;
        return Both(AlongY(Shape.Cylinder(form.CheekRadiusMm, high - low, rim)), (low + high) / 2);
    }

    /// <summary>The plates that carry the cheeks, from the axis inwards by a length, between two heights over the skin.</summary>
    public Solid CheekPlates(double length, double low, double high)
    {
        var plate = Shape.BoxBetween(
            new Vec3(0, form.CheekInnerMm - SpareMm, low - form.HeightMm),
            new Vec3(length, form.CheekOuterMm, high - form.HeightMm),
            Math.Min(edge, form.CheekMm / 4));
        return Solid.Union(plate, plate.Moved(Pose.Mirror(Vec3.UnitY)));
    }

    /// <summary>The cast bar, reaching half-way into its cheeks.</summary>
    public Solid Bar() => AlongY(Shape.Cylinder(form.BarMm / 2, form.CheekInnerMm + form.CheekOuterMm));

    /// <summary>The holes in the cheeks for a drawn pin.</summary>
    /// <param name="halfLength">Past the outer faces of the cheeks, so that the pin can be put in.</param>
    public Solid PinHoles(double halfLength) => AlongY(Shape.Cylinder(form.HoleMm / 2, 2 * halfLength));

    /// <summary>What a web between a link's two windows would leave too thin, in the link's frame; null where it is thick enough.</summary>
    /// <param name="pitch">Between the joints at both ends of the link.</param>
    public Solid? ThinWeb(double pitch)
    {
        var high = HingeForm.PartedAbove(pitch, form.EyeSweepMm, form.CheekSweepMm, form.WireMm);
        if (high <= 0)
        {
            return null;
        }

        // All of it goes, from window to window and down to the skin. Where the link's own cheeks face its eye, outside the window for the next
        // cheeks, the eye's root makes way as well; its ring does not.
        Solid Cut(double from) => Shape.BoxBetween(
            new Vec3(-pitch / 2, from, -1),
            new Vec3(pitch / 2, form.CheekInnerMm, form.HeightMm + high));
        var ring = AlongY(Shape.Cylinder(Math.Max(form.CheekSweepMm - 0.04, form.EyeRadiusMm + form.PlayMm), 4 * form.CheekInnerMm)).Moved(pitch / 2, 0, form.HeightMm);
        var cut = Solid.Union(Cut(form.EyeWidthMm / 2 - 0.04), Cut(form.CheekInnerMm - SlotMm).Minus(ring));
        return Solid.Union(cut, cut.Moved(Pose.Mirror(Vec3.UnitY)));
    }

    /// <summary>What the neighbour's eye sweeps, with its relief; taken from the side with the bar.</summary>
    /// <param name="toSkin">How far along the line the window is opened straight down at least, so that no blade is left between it and an opening; 0 to blunt its edge only.</param>
    public Solid EyeSweep(double toSkin)
    {
        var radius = form.EyeSweepMm;
        return Sweep(radius, toSkin > 0 ? Math.Max(radius, toSkin) : Blunt(radius), 2 * form.CheekInnerMm);
    }

    /// <summary>The neighbour's eye's window opened upwards, from outside to so far over the link; in the frame of the bar.</summary>
    /// <param name="length">From the axis to where what is over the window is thick enough to go on.</param>
    /// <param name="top">Height of the opening over the skin.</param>
    public Solid EyeWindowAbove(double length, double top)
    {
        var width = 2 * form.CheekInnerMm;
        return Shape.BoxBetween(
            new Vec3(-2 * form.EyeRadiusMm, -width / 2, 0), new Vec3(length, width / 2, top - form.HeightMm), Math.Min(edge, width / 6));
    }

    /// <summary>A round about y, with a straight way down to the skin that reaches so far along the line.</summary>
    private Solid Sweep(double radius, double reach, double width)
    {
        var rim = Math.Min(edge, width / 6);
        var round = AlongY(Shape.Cylinder(radius, width, rim));
        return reach > 0
            ? Solid.Union(round, Shape.BoxBetween(new Vec3(-reach, -width / 2, -2 * radius), new Vec3(reach, width / 2, 0), rim))
            : round;
    }

    /// <summary>How far along the line the window for the neighbour's cheeks reaches at a height over the skin; 0 where it stays clear.</summary>
    public double CheekReach(double height)
    {
        var radius = form.CheekSweepMm;
        var depth = form.HeightMm - height;
        return Math.Max(Blunt(radius), Math.Sqrt(Math.Max(0, radius * radius - depth * depth)));
    }

    /// <summary>How far along the line a round must be opened down to the skin so that its edge there is no blade; 0 where it stays clear.</summary>
    private double Blunt(double radius)
    {
        var depth = form.HeightMm - BluntMm;
        return depth < radius && form.HeightMm < radius + SpareMm ? Math.Sqrt(radius * radius - depth * depth) : 0;
    }

    /// <summary>Two lugs that meet the other side's in the back-bend, before the stones do; trimmed to the wedge.</summary>
    /// <param name="isEyeSide">Which side of the joint.</param>
    /// <param name="link">Where the stops stand.</param>
    /// <param name="length">From the joint's axis to the lugs' roots.</param>
    /// <param name="high">Height of the lugs' tops over the skin.</param>
    /// <param name="root">Where what carries the lugs begins, from the axis, and a height inside it: a body lower than the lugs gets feet for them. Null where their roots meet it.</param>
    public Solid Stops(bool isEyeSide, LinkForm link, double length, double high, (double FromMm, double LowMm)? root = null)
    {
        Solid Lug(double from, double low) => Shape.BoxBetween(
            new Vec3(from, link.StopYMm - link.StopHalfMm, low - form.HeightMm),
            new Vec3(length, link.StopYMm + link.StopHalfMm, high - form.HeightMm),
            Math.Min(edge, link.StopHalfMm / 3));
        var lug = Lug(-0.2, link.StopLowMm);
        if (root is { } foot && foot.LowMm < link.StopLowMm)
        {
            lug = Solid.Union(lug, Lug(foot.FromMm, foot.LowMm));
        }

        var both = Solid.Union(lug, lug.Moved(Pose.Mirror(Vec3.UnitY)));

        // Trimmed before the fillets at its root, so that no fillet runs over an edge that is cut off later.
        return Solid.Common(
            Blend.Fillet(0.06),
            isEyeSide ? both.Moved(Pose.Mirror(Vec3.UnitX)) : both,
            Wedge(isEyeSide, link.InwardHalf, link.OutwardHalf));
    }

    /// <summary>What the neighbour's cheeks sweep, with their relief; taken from the side with the eye, outside the eye's width.</summary>
    /// <param name="side">How far across the line the sweep is opened; never less than the cheeks need.</param>
    public Solid CheekSweep(double side = 0)
    {
        // A hair beside the eye: faces that lie flush would be eaten by the rounding of the cut.
        double low = form.EyeWidthMm / 2 + 0.01, high = Math.Max(form.CheekOuterMm + form.ReliefMm, side);
        var radius = form.CheekSweepMm;
        return Both(Sweep(radius, Blunt(radius), high - low), (low + high) / 2);
    }

    /// <summary>The room of one side: below the axis it leaves half the inward bend, above it half the outward bend.</summary>
    public static Solid Wedge(bool isEyeSide, double inwardHalf, double outwardHalf)
    {
        var side = isEyeSide ? 1 : -1;
        var above = Shape.HalfSpace(Vec3.Zero, new Vec3(side * Math.Cos(outwardHalf), 0, Math.Sin(outwardHalf)));
        var below = Shape.HalfSpace(Vec3.Zero, new Vec3(side * Math.Cos(inwardHalf), 0, -Math.Sin(inwardHalf)));
        return Solid.Common(above, below);
    }

    /// <summary>The rounds that may cross the wedge from the side with the eye.</summary>
    public Solid EyeAllowance() => AlongY(Shape.Cylinder(form.EyeRadiusMm + form.PlayMm + SpareMm, form.EyeWidthMm + 2 * SpareMm));

    /// <summary>The rounds that may cross the wedge from the side with the bar.</summary>
    public Solid CheekAllowance()
    {
        double low = form.CheekInnerMm - 2 * SpareMm, high = form.CheekOuterMm + SpareMm;
        return Both(AlongY(Shape.Cylinder(form.CheekRadiusMm + SpareMm, high - low)), (low + high) / 2);
    }

    private static Solid Both(Solid middle, double y) => Solid.Union(middle.Moved(0, y, 0), middle.Moved(0, -y, 0));

    /// <summary>Lays a solid about z along y.</summary>
    public static Solid AlongY(Solid aboutZ) => aboutZ.Moved(Pose.Turn(Vec3.UnitX, Math.PI / 2));
}
