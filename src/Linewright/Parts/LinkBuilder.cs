using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>Builds a link: four claws, upper and base rail, cheeks with the bar, eye, window. The link's frame.</summary>
internal sealed class LinkBuilder(LineSpec spec, LinkForm form)
{
    // Edges that the windows leave are broken as a polisher would. Common practice: 0.1 to 0.2 where skin or cloth may catch.
    internal static readonly Blend CutEdge = Blend.Fillet(0.08);

    // The setter burnishes the rim of a bearing: no knife edge is left against the stone.
    private static readonly Blend SeatEdge = Blend.Fillet(0.03);

    // A tip thinner than this is caught by cloth and lifts; a third of the claw is what a setter leaves. Assumed.
    private const double LeastTipMm = 0.18, TipShare = 0.3;

    // The rim of a bearing as a setter leaves it. Assumed.
    private const double SeatRimMm = 0.05;

    private readonly HingeEnds ends = new(form.Hinge, spec.EdgeMm);

    /// <summary>The whole link in one state; as cast its polished faces stand out by the allowance; bearings, bores and the eye's sides do not.</summary>
    public Solid Build(PartState state)
    {
        var hinge = form.Hinge;
        var allowance = state == PartState.AsCast ? spec.FinishLossMm : 0;
        Solid atBar(Solid s) => s.Moved(Pose.Move(form.BarAxis));
        Solid atEye(Solid s) => s.Moved(Pose.Move(form.NextBarAxis));
        var fillet = Blend.Fillet(spec.FilletMm);
        var stone = StoneSolid();

        // Rails, cheeks and stops keep inside the wedges; only the hinge's own rounds cross them.
        var cheeks = Solid.Union(
            atBar(ends.CheekRounds()),
            atBar(ends.CheekPlates(form.CheekLengthMm, 0.12, form.CheekTopMm)));
        var frame = Solid.Union(fillet, [BaseRail(), UpperRail(), cheeks, atEye(ends.Eye(state, allowance)), Stops(), .. Sides()])
            .Grown(allowance)
            .Minus(stone.Grown(LinkForm.RailStoneClearMm));
        var metal = Solid.Union(fillet, [frame, .. Claws(state, allowance)]);
        var allowed = Solid.Union(
            Solid.Common(
                atEye(HingeEnds.Wedge(true, form.InwardHalf, form.OutwardHalf)),
                atBar(HingeEnds.Wedge(false, form.InwardHalf, form.OutwardHalf))),
            atEye(ends.EyeAllowance().Grown(state == PartState.AsCast ? allowance + 3 : 0)),
            atBar(ends.CheekAllowance().Grown(allowance)));
        var skin = Shape.HalfSpace(new Vec3(0, 0, state == PartState.AsCast ? -allowance : 0), Vec3.UnitZ);

        // The tail of an open eye hangs below the skin until it is closed.
        var open = state == PartState.AsCast && hinge.Kind == HingeKind.EyeOverBar;
        var below = open ? skin.Minus(atEye(EyeTailRoom())) : skin;

        var window = atBar(ends.EyeSweep(form.IsOpen ? hinge.EyeSweepMm : 0));
        if (form.UpperGapMm is { } gap)
        {
            window = Solid.Union(window, atBar(ends.EyeWindowAbove(gap, form.UpperTopMm + 0.1)));
        }

        if (ends.ThinWeb(form.PitchMm) is { } web)
        {
            window = Solid.Union(window, web);
        }

        var link = Solid.Common(CutEdge, metal, allowed)
            .Minus(CutEdge, atEye(ends.CheekSweep()), window)
            .Minus(SeatEdge, SeatCut(state, stone))
            .Minus(atEye(ends.EyeHole(state)), below);
        return hinge.Kind == HingeKind.EyeOverBar
            ? Solid.Union(link, atBar(ends.Bar()))
            : link.Minus(atBar(ends.PinHoles(hinge.CheekOuterMm + 0.5)));
    }

    /// <summary>The link's regions with their least walls.</summary>
    public ImmutableArray<Feature> Features()
    {
        const string wall = "open setting, finished wall in this metal", wire = "thinnest cast wire, finished", knuckle = "metal round a hinge hole, finished";
        var hinge = form.Hinge;
        Solid atBar(Solid s) => s.Moved(Pose.Move(form.BarAxis));
        var features = ImmutableArray.CreateBuilder<Feature>();
        var baseRail = BaseRail();
        var acrossEnds = Shape.Box(20, 2 * form.OpeningMm, 20);
        var cheeks = Solid.Union(
            atBar(ends.CheekRounds()),
            atBar(ends.CheekPlates(form.CheekLengthMm, 0.12, Math.Min(form.CheekTopMm, hinge.HeightMm + 0.7 * hinge.CheekRadiusMm))));

        // A closed base is what the cheeks stand on: between the windows it is all cheek.
        cheeks = form.IsOpen ? cheeks : cheeks.Grown(0.15);
        features.Add(new Feature("base rail", baseRail.Minus(form.IsOpen ? acrossEnds : Solid.Union(acrossEnds, cheeks)), Math.Min(spec.WallLimitMm, form.RailMm) - 0.02, wall));
        features.Add(new Feature("rail end", Solid.Common(baseRail, acrossEnds), LinkForm.WireMm - 0.02, wire));
        features.Add(new Feature("upper rail", UpperRail(), LinkForm.WireMm - 0.02, wire));
        features.AddRange(Sides().Select(side => new Feature("side", side, LinkForm.WireMm - 0.02, wire)));
        features.Add(new Feature("cheek", cheeks, spec.KnuckleLimitMm, knuckle) { PolishedFaces = 1 });
        features.Add(new Feature("eye", ends.Eye(PartState.AsSet).Moved(Pose.Move(form.NextBarAxis)), spec.KnuckleLimitMm, knuckle) { PolishedFaces = 1 });
        features.Add(new Feature("stop", Stops(), LinkForm.WireMm - 0.02, wire));
        var belowGirdle = Shape.HalfSpace(new Vec3(0, 0, form.GirdleHeightMm), Vec3.UnitZ);
        var underBearing = Shape.HalfSpace(new Vec3(0, 0, form.GirdleHeightMm - form.ClawRadiusMm), Vec3.UnitZ);
        var shanks = Solid.Union([.. Quarters(Shank)]);
        features.Add(new Feature("claw heel", Solid.Common(shanks, underBearing), 0.5 * spec.ClawMm, "half of the claw must remain below its bearing") { PolishedFaces = 1 });

        // The bearing thins out to its rim; what is left behind its middle is judged by the seat's depth. The setter leaves its rim and the claw's tip.
        features.Add(new Feature("bearing", Solid.Common(shanks, belowGirdle).Minus(underBearing), SeatRimMm, "rim of a bearing, burnished") { Made = MadeBy.Bench, PolishedFaces = 1 });
        features.Add(new Feature("claw tip", Solid.Union([.. Quarters(Tip)]).Minus(belowGirdle), Math.Max(LeastTipMm, TipShare * spec.ClawMm), "a tip is a third of its claw over the crown, as set") { Made = MadeBy.Bench });
        if (hinge.Kind == HingeKind.EyeOverBar)
        {
            features.Add(new Feature("bar", atBar(ends.Bar()), Math.Min(hinge.BarMm, spec.CastBarLimitMm) - 0.02, "bar cast in this metal") { PolishedFaces = 0 });
        }

        return features.ToImmutable();
    }

    /// <summary>The stone where it sits.</summary>
    public Solid StoneSolid()
    {
        var body = spec.Stone.Body;
        var planes = body.Faces.Select(face => (face.Plane.Normal, face.Plane.Offset)).ToArray();
        return Shape.Faceted(planes, body.Bounds).Moved(0, 0, form.GirdleHeightMm);
    }

    private Solid EyeTailRoom() => Shape.BoxBetween(
        new Vec3(-form.Hinge.PlayMm, -form.Hinge.EyeWidthMm, -20),
        new Vec3(form.Hinge.EyeRadiusMm + 1, form.Hinge.EyeWidthMm, 0));

    /// <summary>A plate on the skin with an opening under the stone, its rims rounded so that nothing catches.</summary>
    private Solid BaseRail()
    {
        double corner = 0.62 * Math.Min(form.BaseHalfXMm, form.BaseHalfYMm), rail = form.RailMm;
        var plate = Shape.Plate(2 * form.BaseHalfXMm, 2 * form.BaseHalfYMm, rail, corner, Math.Min(spec.EdgeMm, rail / 4));
        if (!form.IsOpen)
        {
            return plate.Moved(0, 0, rail / 2);
        }

        var opening = Shape.Plate(2 * form.OpeningXMm, 2 * form.OpeningMm, 3 * rail, Math.Min(form.OpeningXMm, form.OpeningMm));
        if (form.HornFromMm is { } horn)
        {
            opening = Solid.Union(opening, Shape.BoxBetween(new Vec3(-form.PitchMm, -form.Hinge.CheekInnerMm, -2 * rail), new Vec3(-horn, form.Hinge.CheekInnerMm, 2 * rail)));
        }

        return plate.Minus(Blend.Fillet(0.12), opening).Moved(0, 0, rail / 2);
    }

    /// <summary>A collar tucked under the girdle, its inside bevelled along the pavilion.</summary>
    private Solid UpperRail()
    {
        var slope = Math.Tan(double.DegreesToRadians(spec.Stone.Proportions.PavilionDeg));
        double flat = form.UpperOuterMm - form.UpperFlatMm, round = Math.Min(spec.EdgeMm, 0.1);
        double top = form.UpperTopMm, low = form.UpperLowMm, tip = top - (flat - form.UpperInnerMm) * slope;

        // The outline is drawn inside by the rounding, which grows it back; a bevel's corners move by less than a right angle's.
        return Shape.Revolved(
            [
                (form.UpperInnerMm + round, low + round),
                (form.UpperOuterMm - round, low + round),
                (form.UpperOuterMm - round, top - round),
                (flat + 0.4 * round, top - round),
                (form.UpperInnerMm + round, tip - 0.45 * round),
            ],
            round);
    }

    /// <summary>The collar drawn down to the base rail between the claws, where no gallery stays open; else nothing.</summary>
    private IEnumerable<Solid> Sides()
    {
        if (form.SideHalfMm > 0)
        {
            // It stands on the base rail, a fillet behind its edge: surfaces side by side would swell where they are blended.
            double round = Math.Min(spec.EdgeMm, 0.1), low = form.RailMm - LinkForm.IntoMm + round, high = form.CheekTopMm - round;
            var outer = Math.Min(form.UpperOuterMm, Math.Max(form.BaseHalfYMm - spec.FilletMm, form.UpperInnerMm + form.Hinge.WireMm + 0.02));
            var ring = Shape.Revolved(
                [
                    (form.UpperInnerMm + round, low),
                    (outer - round, low),
                    (outer - round, high),
                    (form.UpperInnerMm + round, high),
                ],
                round);

            // From inside the eye's sides and no further: behind its root the ring would shut a hollow in.
            var beside = form.Hinge.EyeWidthMm / 2 - 1.5 * LinkForm.IntoMm;
            yield return Solid.Common(ring, Shape.Box(2 * form.SideHalfMm, 20, 20)).Minus(Shape.Box(20, 2 * beside, 20));
        }
    }

    /// <summary>Four lugs between the claws' roots and the wedge: in the back-bend they meet before the stones do.</summary>
    private Solid Stops()
    {
        // Over the link's own cheeks they go down into them: a slit between the two would hold investment and take no brush.
        var hinge = form.Hinge;
        var length = form.PitchMm / 2 - form.ClawReachMm * Math.Cos(form.ClawAzimuth) + 0.3 * form.StopHalfMm;
        return Solid.Union(
            ends.Stops(true, form, length, form.StopHighMm).Moved(Pose.Move(form.NextBarAxis)),
            ends.Stops(false, form, length, form.StopHighMm, (0, hinge.HeightMm + hinge.CheekRadiusMm / 2)).Moved(Pose.Move(form.BarAxis)));
    }

    private IEnumerable<Solid> Claws(PartState state, double allowance)
    {
        if (state == PartState.AsCast)
        {
            return Quarters((cos, sin) => Solid.Union(Shank(cos, sin), Upright(cos, sin)).Grown(allowance));
        }

        // As set, no claw stands over the table: the setter files it down.
        var filed = Shape.HalfSpace(new Vec3(0, 0, form.TableHeightMm), Vec3.UnitZ);
        return Quarters((cos, sin) => Solid.Common(Blend.Fillet(0.08), Solid.Union(Shank(cos, sin), Tip(cos, sin)), filed));
    }

    private IEnumerable<Solid> Quarters(Func<double, double, Solid> claw)
    {
        for (var quarter = 0; quarter < 4; quarter++)
        {
            var side = quarter is 0 or 3 ? 1 : -1;
            var hand = quarter < 2 ? 1 : -1;
            yield return claw(side * Math.Cos(form.ClawAzimuth), hand * Math.Sin(form.ClawAzimuth));
        }
    }

    /// <summary>A claw from its foot to the girdle: what stands behind the bearing.</summary>
    private Solid Shank(double cos, double sin) => Shape.TaperedCapsule(
        new Vec3(Math.Sign(cos) * form.ClawFootXMm, Math.Sign(sin) * form.ClawFootYMm, form.ClawFootHeightMm),
        1.04 * form.ClawRadiusMm,
        At(form.ClawReachMm, form.GirdleHeightMm, cos, sin),
        form.ClawRadiusMm);

    /// <summary>As set: from the girdle over the crown.</summary>
    private Solid Tip(double cos, double sin) => Shape.TaperedCapsule(
        At(form.ClawReachMm, form.GirdleHeightMm, cos, sin), form.ClawRadiusMm, At(form.TipReachMm, form.TipHeightMm, cos, sin), form.TipRadiusMm);

    /// <summary>As cast, upright and long: the setter cuts nothing away but bends the leaf over the crown.</summary>
    private Solid Upright(double cos, double sin)
    {
        var top = 0.8 * form.ClawRadiusMm;
        return Shape.TaperedCapsule(
            At(form.ClawReachMm, form.GirdleHeightMm, cos, sin), form.ClawRadiusMm, At(form.ClawReachMm, form.CastTopMm - top, cos, sin), top);
    }

    private static Vec3 At(double reach, double height, double cos, double sin) => new(reach * cos, reach * sin, height);

    /// <summary>The bearing: the stone itself; as cast also the way down which the stone is let in.</summary>
    private Solid SeatCut(PartState state, Solid stone)
    {
        if (state == PartState.AsSet)
        {
            return stone;
        }

        var shaft = Shape.Cylinder(form.StoneMm / 2, 10).Moved(0, 0, form.GirdleHeightMm + 5);
        return Solid.Union(stone, shaft);
    }
}
