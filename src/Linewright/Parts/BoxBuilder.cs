using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>Builds the box: hinge end with its bar, cavity, retaining lip, cut-out for the push, post for the safety.</summary>
internal sealed class BoxBuilder(LineSpec spec, LinkForm link, ClaspForm form)
{
    // The box stands back from the wedge by so much above the axis: its lugs stop the last link before the roof strikes a stone. Assumed.
    private const double StoneRoom = 5 * Math.PI / 180;

    // Further in than the cavity begins the floor is open behind the eye: two edges that meet there would leave a fin.
    private const double FloorRoomMm = 0.3;

    private readonly HingeEnds ends = new(link.Hinge, spec.EdgeMm);

    /// <summary>The box in one state, in the clasp's frame.</summary>
    public Solid Build(PartState state)
    {
        var hinge = link.Hinge;
        var allowance = state == PartState.AsCast ? spec.FinishLossMm : 0;
        var axis = Pose.Move(0, 0, hinge.HeightMm);
        double half = form.WidthMm / 2, edge = Math.Min(0.3, form.WallMm / 2.5);

        var outside = Shape.BoxBetween(new Vec3(0.06, -half, 0), new Vec3(form.MouthMm, half, form.HeightMm), edge);
        var body = Solid.Common(
            Blend.Fillet(0.1),
            outside,
            HingeEnds.Wedge(false, link.InwardHalf, link.OutwardHalf + StoneRoom).Moved(axis));
        var metal = Solid.Union(Blend.Fillet(spec.FilletMm), body, ends.CheekRounds().Moved(axis), ends.Stops(false, link, 0.25 + spec.ClaspWallMm, link.ClaspStopHighMm, (0.1, form.HeightMm - form.WallMm / 2)).Moved(axis));
        if (spec.Safety)
        {
            metal = Solid.Union(Blend.Fillet(0.15), metal, SafetyBuilder.Post(form, SafetyBuilder.BoxPostX(form)));
        }

        var allowed = Solid.Union(
            HingeEnds.Wedge(false, link.InwardHalf, link.OutwardHalf).Moved(axis),
            ends.CheekAllowance().Moved(axis));
        metal = Solid.Common(LinkBuilder.CutEdge, metal, allowed).Grown(allowance)
            .Minus(LinkBuilder.CutEdge, Window().Moved(axis))
            .Minus(Cavity(), CutOut(), Mouth(), Shape.HalfSpace(new Vec3(0, 0, -allowance), Vec3.UnitZ));
        return hinge.Kind == HingeKind.EyeOverBar
            ? Solid.Union(metal, ends.Bar().Moved(axis))
            : metal.Minus(ends.PinHoles(half + 2).Moved(axis));
    }

    /// <summary>The box's regions with their least walls.</summary>
    public ImmutableArray<Feature> Features()
    {
        var hinge = link.Hinge;
        var axis = Pose.Move(0, 0, hinge.HeightMm);
        double half = form.WidthMm / 2;
        var cheeks = ends.CheekRounds().Moved(axis);
        return
        [
            new Feature("box wall", Shape.BoxBetween(new Vec3(0.06, -half, 0), new Vec3(form.MouthMm - form.LipMm, half, form.HeightMm)).Minus(cheeks.Grown(0.2)), spec.WallLimitMm - 0.02, "box wall, finished wall in this metal") { PolishedFaces = 1 },
            new Feature("lip", Shape.BoxBetween(new Vec3(form.MouthMm - form.LipMm, -half, 0), new Vec3(form.MouthMm, half, form.HeightMm)), spec.WallLimitMm - 0.05, "box wall, finished wall in this metal") { PolishedFaces = 1 },
            new Feature("cheek", cheeks, spec.KnuckleLimitMm, "metal round a hinge hole, finished") { PolishedFaces = 1 },
        ];
    }

    /// <summary>What the last link's eye sweeps; where it would leave the roof's front too thin, the roof is opened instead.</summary>
    private Solid Window()
    {
        // Thinner by so much passes: the edges of the cut are broken. Assumed.
        const double spare = 0.04;
        var hinge = link.Hinge;
        double radius = hinge.EyeSweepMm, under = form.HeightMm - spec.DrawnWallMm + spare - hinge.HeightMm;
        var front = (form.HeightMm - hinge.HeightMm) * Math.Tan(link.OutwardHalf + StoneRoom);
        var back = under < radius ? Math.Sqrt(radius * radius - under * under) : 0;
        var sweep = ends.EyeSweep(form.CavityMm + FloorRoomMm);
        return back > front + spare ? Solid.Union(sweep, ends.EyeWindowAbove(back, form.HeightMm + 1)) : sweep;
    }

    /// <summary>The room for the tongue; the lip is what is left of the roof at the mouth. Corners are rounded inside.</summary>
    private Solid Cavity()
    {
        double half = form.WidthMm / 2 - form.WallMm, corner = 0.12;
        var room = Shape.BoxBetween(
            new Vec3(form.CavityMm, -half, form.WallMm),
            new Vec3(form.MouthMm - form.LipMm, half, form.RoofMm),
            corner);
        var mouth = Shape.BoxBetween(
            new Vec3(form.MouthMm - form.LipMm - 0.5, -half, form.WallMm),
            new Vec3(form.MouthMm + 1, half, form.RoofMm - form.LipDropMm),
            corner);

        // Behind the eye the cavity is open: a passage as wide as the eye's window joins the two, and no fin is left beside it.
        var window = link.Hinge.CheekInnerMm;
        var passage = Shape.BoxBetween(
            new Vec3(-1, -window, form.WallMm),
            new Vec3(form.CavityMm + 0.4, window, Math.Min(form.RoofMm, link.Hinge.HeightMm + link.Hinge.EyeRadiusMm)),
            corner);
        return Solid.Union(room, mouth, passage);
    }

    /// <summary>Open to the mouth, so that the push slides in with the tongue.</summary>
    private Solid CutOut()
    {
        var half = form.CutOutMm / 2;
        return Shape.BoxBetween(
            new Vec3(form.CatchMm - form.PushMm - spec.SidePlayMm, -half, form.RoofMm - form.LipDropMm - 0.2),
            new Vec3(form.MouthMm + 1, half, form.HeightMm + 1),
            Math.Min(0.12, half / 3));
    }

    /// <summary>The face that meets the carrier is a bearing: it keeps no allowance.</summary>
    private Solid Mouth()
        => Shape.HalfSpace(new Vec3(form.MouthMm, 0, 0), -Vec3.UnitX);
}
