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

    /// <summary>The eye: a ring about y; as cast open to the skin side with its end hanging straight, ready to be closed.</summary>
    public Solid Eye(PartState state)
    {
        double inner = form.HoleMm / 2, outer = form.EyeRadiusMm, width = form.EyeWidthMm;
        var rim = Math.Min(edge, Math.Min((outer - inner) / 3, width / 4));
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
            // The way in, as deep as the tail is long; at the tail wider than the eye with its allowance, so that no fin stays.
            double reach = form.HeightMm + 4, half = form.HoleMm / 2, side = form.EyeWidthMm / 2 + 0.02;
            hole = Solid.Union(
                hole,
                Shape.BoxBetween(new Vec3(-half, -side, -reach), new Vec3(half, side, 0)),
                Shape.BoxBetween(new Vec3(0, -side - 0.3, -reach), new Vec3(half, side + 0.3, 0)));
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
    public Solid PinHoles() => AlongY(Shape.Cylinder(form.HoleMm / 2, 2 * form.CheekOuterMm + 1));

    /// <summary>What the neighbour's eye sweeps, with its relief; taken from the side with the bar.</summary>
    public Solid EyeSweep()
    {
        var radius = form.EyeRadiusMm + form.PlayMm + form.ReliefMm;
        return AlongY(Shape.Cylinder(radius, 2 * form.CheekInnerMm, Math.Min(edge, form.CheekInnerMm / 3)));
    }

    /// <summary>What the neighbour's cheeks sweep, with their relief; taken from the side with the eye, outside the eye's width.</summary>
    public Solid CheekSweep()
    {
        // A hair beside the eye: faces that lie flush would be eaten by the rounding of the cut.
        double low = form.EyeWidthMm / 2 + 0.01, high = form.CheekOuterMm + form.ReliefMm;
        var radius = form.CheekRadiusMm + form.PlayMm + form.ReliefMm;
        return Both(AlongY(Shape.Cylinder(radius, high - low, Math.Min(edge, (high - low) / 4))), (low + high) / 2);
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
    public Solid EyeAllowance() => AlongY(Shape.Cylinder(form.EyeRadiusMm + form.PlayMm + SpareMm, form.EyeWidthMm + SpareMm));

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
