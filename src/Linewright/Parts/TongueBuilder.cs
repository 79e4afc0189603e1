using System.Collections.Immutable;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>Builds the tongue: carrier with its eye, the strip folded into two leaves, catch and push. The clasp's frame, closed.</summary>
internal sealed class TongueBuilder(LineSpec spec, LinkForm link, ClaspForm form)
{
    private readonly HingeEnds ends = new(link.Hinge, spec.EdgeMm);

    /// <summary>The tongue in one state; the strip is a working part and keeps its size in both.</summary>
    public Solid Build(PartState state)
    {
        var allowance = state == PartState.AsCast ? spec.FinishLossMm : 0;
        var axis = Pose.Move(form.LengthMm, 0, link.Hinge.HeightMm);
        double half = form.WidthMm / 2, edge = Math.Min(0.3, form.WallMm / 2.5), outer = form.CarrierMm + form.CarrierWallMm;

        var wedge = HingeEnds.Wedge(true, link.InwardHalf, link.OutwardHalf).Moved(axis);
        var plate = Shape.BoxBetween(new Vec3(form.CarrierMm, -half, 0), new Vec3(outer, half, form.HeightMm), edge);
        var carrier = Solid.Common(Blend.Fillet(0.08), Solid.Union(Blend.Fillet(spec.FilletMm), plate, Stops(outer)), wedge);
        var metal = Solid.Union(Blend.Fillet(spec.FilletMm), carrier, ends.Eye(state).Moved(axis));
        if (spec.Safety)
        {
            metal = Solid.Union(Blend.Fillet(0.15), metal, SafetyBuilder.Post(form, SafetyBuilder.CarrierPostX(form)));
        }

        var allowed = Solid.Union(wedge, ends.EyeAllowance().Grown(state == PartState.AsCast ? 3 : 0).Moved(axis));
        var inner = Shape.HalfSpace(new Vec3(form.CarrierMm, 0, 0), Vec3.UnitX);
        var skin = Shape.HalfSpace(new Vec3(0, 0, -allowance), Vec3.UnitZ);
        var open = state == PartState.AsCast && link.Hinge.Kind == HingeKind.EyeOverBar;
        var below = open
            ? skin.Minus(Shape.BoxBetween(
                new Vec3(-link.Hinge.PlayMm, -link.Hinge.EyeWidthMm, -20),
                new Vec3(link.Hinge.EyeRadiusMm + 1, link.Hinge.EyeWidthMm, 0)).Moved(axis))
            : skin;
        metal = Solid.Common(LinkBuilder.CutEdge, metal, allowed).Grown(allowance).Minus(
            LinkBuilder.CutEdge, ends.CheekSweep().Moved(axis)).Minus(inner, ends.EyeHole(state).Moved(axis), below);

        // The strip is joined last: its slide and its root are bearings.
        return Solid.Union(Blend.Fillet(0.12), metal, Strip());
    }

    /// <summary>The tongue's regions with their least walls; the strip is rolled, not cast, and only held to its own size.</summary>
    public ImmutableArray<Feature> Features()
    {
        double half = form.WidthMm / 2, outer = form.CarrierMm + form.CarrierWallMm;
        return
        [
            new Feature("carrier", Shape.BoxBetween(new Vec3(form.CarrierMm, -half, 0), new Vec3(outer, half, form.HeightMm)), spec.WallLimitMm - 0.05, "box wall, finished wall in this metal"),
            new Feature("eye", ends.Eye(PartState.AsSet).Moved(Pose.Move(form.LengthMm, 0, link.Hinge.HeightMm)), spec.KnuckleLimitMm, "metal round a hinge hole, finished"),
            new Feature("stop", Stops(outer), LinkForm.WireMm - 0.02, "thinnest cast wire, finished"),
            new Feature("tongue strip", Strip(), form.StripMm - 0.02, "the strip's own thickness"),
        ];
    }

    /// <summary>The strip alone: lower leaf, fold, upper leaf with its catch, push.</summary>
    public Solid Strip()
    {
        double t = form.StripMm, half = form.StripWidthMm / 2, middle = (form.LeafGapMm + t) / 2;
        double foldX = form.FoldMm + middle + t / 2, foldZ = form.LowerLeafMm + t / 2 + middle, round = Math.Min(0.12, t / 3);
        var lower = Shape.BoxBetween(
            new Vec3(foldX, -half, form.LowerLeafMm), new Vec3(form.CarrierMm + 0.3, half, form.LowerLeafMm + t));
        var upper = Shape.BoxBetween(
            new Vec3(foldX, -half, form.UpperLeafMm - t), new Vec3(form.CatchMm, half, form.UpperLeafMm));
        var fold = HingeEnds.AlongY(Shape.Ring(form.LeafGapMm / 2, form.LeafGapMm / 2 + t, 2 * half))
            .Moved(foldX, 0, foldZ)
            .Minus(Shape.HalfSpace(new Vec3(foldX, 0, 0), -Vec3.UnitX));
        var push = Shape.BoxBetween(
            new Vec3(form.CatchMm - form.PushMm, -form.CutOutMm / 2 + spec.SidePlayMm, form.UpperLeafMm - t / 2),
            new Vec3(form.CatchMm, form.CutOutMm / 2 - spec.SidePlayMm, form.HeightMm + form.PressMm),
            round);
        return Solid.Union(Solid.Union(lower, fold, upper), push);
    }

    /// <summary>Lugs that meet the next link's stops.</summary>
    private Solid Stops(double outer)
    {
        double y = link.ClawReachMm * Math.Sin(link.ClawAzimuth), half = Math.Max(0.26, 0.75 * link.ClawRadiusMm);
        var high = link.UpperTopMm;
        var lug = Shape.BoxBetween(
            new Vec3(outer - 0.3, y - half, high - Math.Max(0.5, 0.8 * link.UpperHeightMm)),
            new Vec3(form.LengthMm + 0.2, y + half, high),
            Math.Min(spec.EdgeMm, half / 3));
        return Solid.Union(lug, lug.Moved(Pose.Mirror(Vec3.UnitY)));
    }
}
