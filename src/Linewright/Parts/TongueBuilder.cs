using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>Builds the tongue: carrier with its eye, the strip folded into two leaves, catch and push. The clasp's frame, closed.</summary>
internal sealed class TongueBuilder(LineSpec spec, LinkForm link, ClaspForm form)
{
    // The push stands a hair back from the catch's edge: flush faces would leave a groove too fine to cast.
    private const double PushBackMm = 0.08;

    private readonly HingeEnds ends = new(link.Hinge, spec.EdgeMm);

    /// <summary>The tongue in one state; the strip is a working part and keeps its size in both.</summary>
    public Solid Build(PartState state)
    {
        var allowance = state == PartState.AsCast ? spec.FinishLossMm : 0;
        var axis = Pose.Move(form.LengthMm, 0, link.Hinge.HeightMm);
        double half = form.WidthMm / 2, edge = Math.Min(0.3, form.WallMm / 2.5), outer = form.CarrierMm + form.CarrierWallMm;

        var wedge = HingeEnds.Wedge(true, link.InwardHalf, link.OutwardHalf).Moved(axis);
        var plate = Shape.BoxBetween(new Vec3(form.CarrierMm, -half, 0), new Vec3(outer, half, form.HeightMm), edge);
        var carrier = Solid.Union(Blend.Fillet(spec.FilletMm), Solid.Common(Blend.Fillet(0.08), plate, wedge), Stops());
        var metal = Solid.Union(Blend.Fillet(spec.FilletMm), carrier, ends.Eye(state, allowance).Moved(axis));
        var allowed = Solid.Union(wedge, ends.EyeAllowance().Grown(state == PartState.AsCast ? 3 : 0).Moved(axis));
        var inner = Shape.HalfSpace(new Vec3(form.CarrierMm, 0, 0), Vec3.UnitX);
        var skin = Shape.HalfSpace(new Vec3(0, 0, -allowance), Vec3.UnitZ);
        var open = state == PartState.AsCast && link.Hinge.Kind == HingeKind.EyeOverBar;
        var below = open
            ? skin.Minus(Shape.BoxBetween(
                new Vec3(-link.Hinge.PlayMm, -link.Hinge.EyeWidthMm, -20),
                new Vec3(link.Hinge.EyeRadiusMm + 1, link.Hinge.EyeWidthMm, 0)).Moved(axis))
            : skin;
        // Beside the cheeks the carrier keeps a wall or nothing.
        var flank = half - link.Hinge.CheekOuterMm - link.Hinge.ReliefMm;
        metal = Solid.Common(LinkBuilder.CutEdge, metal, allowed).Grown(allowance).Minus(
            LinkBuilder.CutEdge, ends.CheekSweep(flank < spec.DrawnWallMm ? half + 0.05 : 0).Moved(axis)).Minus(inner, ends.EyeHole(state).Moved(axis), below);

        if (spec.Safety)
        {
            // After the cuts: its ball stands over the carrier's inner face.
            metal = Solid.Union(Blend.Fillet(0.15), metal, SafetyBuilder.Post(form, SafetyBuilder.CarrierPostX(form)).Grown(allowance));
        }

        // The strip is joined last: its slide and its root are bearings.
        return Solid.Union(Blend.Fillet(0.12), metal, Strip());
    }

    /// <summary>The tongue's regions with their least walls; the strip is rolled, not cast, and only held to its own size.</summary>
    public ImmutableArray<Feature> Features()
    {
        double half = form.WidthMm / 2, outer = form.CarrierMm + form.CarrierWallMm;
        return
        [
            new Feature("carrier", Shape.BoxBetween(new Vec3(form.CarrierMm, -half, 0), new Vec3(outer, half, form.HeightMm)), spec.WallLimitMm - 0.05, "box wall, finished wall in this metal") { PolishedFaces = 1 },
            new Feature("eye", ends.Eye(PartState.AsSet).Moved(Pose.Move(form.LengthMm, 0, link.Hinge.HeightMm)), spec.KnuckleLimitMm, "metal round a hinge hole, finished") { PolishedFaces = 1 },
            new Feature("stop", Stops(), LinkForm.WireMm - 0.02, "thinnest cast wire, finished"),
            new Feature("tongue strip", Strip(), form.StripMm - 0.02, "the strip's own thickness") { Made = MadeBy.Rolling, PolishedFaces = 0 },
        ];
    }

    /// <summary>The strip alone: lower leaf, fold, upper leaf with its catch, push.</summary>
    /// <param name="pressed">How far the push is pressed, mm; 0 at rest.</param>
    /// <remarks>
    /// The fold is low enough for the mouth and the upper leaf is bowed up to its catch: a leaf that rises with the
    /// square of its length is bent evenly by the lip all the way out. Pressed, the bow is taken as an arc still.
    /// </remarks>
    public Solid Strip(double pressed = 0)
    {
        double t = form.StripMm, half = form.StripWidthMm / 2, gap = form.FoldGapMm, middle = (gap + t) / 2;
        double foldX = form.FoldMm + gap / 2 + t, foldZ = form.LowerLeafMm + t / 2 + middle, round = Math.Min(0.12, t / 3);
        var lower = Shape.BoxBetween(
            new Vec3(foldX, -half, form.LowerLeafMm), new Vec3(form.CarrierMm + 0.3, half, form.LowerLeafMm + t));
        var fold = HingeEnds.AlongY(Shape.Ring(gap / 2, gap / 2 + t, 2 * half))
            .Moved(foldX, 0, foldZ)
            .Minus(Shape.HalfSpace(new Vec3(foldX, 0, 0), -Vec3.UnitX));
        var rise = form.RiseMm - pressed;
        var share = 1 - form.PushMm / (form.CatchMm - foldX);
        var push = Shape.BoxBetween(
            new Vec3(form.CatchMm - form.PushMm, -form.CutOutMm / 2 + spec.SidePlayMm, form.UpperLeafMm - form.RiseMm * (1 - share * share) - 0.3 * t - pressed),
            new Vec3(form.CatchMm - PushBackMm, form.CutOutMm / 2 - spec.SidePlayMm, form.HeightMm + form.PressMm - pressed),
            round);
        return Solid.Union(Solid.Union(lower, fold, UpperLeaf(foldX, form.UpperLeafMm - form.RiseMm, rise)), push);
    }

    /// <summary>A leaf that leaves the fold level, its upper face at a height, and rises (or falls) by its free end.</summary>
    private Solid UpperLeaf(double foldX, double top, double rise)
    {
        // Flatter than this the arc's radius would cost more digits than the bow is worth.
        const double straight = 0.02;
        double t = form.StripMm, half = form.StripWidthMm / 2, length = form.CatchMm - foldX, joint = 0.02;
        if (Math.Abs(rise) < straight)
        {
            return Shape.BoxBetween(new Vec3(foldX - joint, -half, top - t), new Vec3(form.CatchMm, half, top));
        }

        var radius = (length * length + rise * rise) / (2 * Math.Abs(rise));
        var ring = rise > 0
            ? HingeEnds.AlongY(Shape.Ring(radius, radius + t, 2 * half)).Moved(foldX, 0, top + radius)
            : HingeEnds.AlongY(Shape.Ring(radius - t, radius, 2 * half)).Moved(foldX, 0, top - radius);
        var reach = Math.Abs(rise) + 1;
        return Solid.Common(ring, Shape.BoxBetween(
            new Vec3(foldX - joint, -half - 1, top - t - reach), new Vec3(form.CatchMm, half + 1, top + reach)));
    }

    private Solid Stops()
    {
        var length = form.LengthMm - form.CarrierMm;

        // Feet begin 0.4 inside the carrier: further out they would end in an edge beside what the neighbour's cheeks sweep. Felt at 8 mm.
        return ends.Stops(true, link, length, link.ClaspStopHighMm, (length - form.CarrierWallMm + 0.4, form.HeightMm - form.WallMm / 2))
            .Moved(form.LengthMm, 0, link.Hinge.HeightMm);
    }
}
