using Linewright.Assembly;
using Linewright.Checks;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using Linewright.Stones;
using static Linewright.Tests.Core.CheckModels;

namespace Linewright.Tests.Core;

public sealed class HingeChecksTests
{
    private const string Loose = "hinge.diametral_clearance_mm=0.30";

    [Fact]
    public void A_pinned_joint_is_felt_with_its_pin()
    {
        var play = One(new NeighbourGapCheck(), Of(2), "hinge-play");
        Assert.Equal(Verdict.Pass, play.Verdict);
        Assert.Contains("pin of the next", play.Where, StringComparison.Ordinal);
        Assert.Equal(Verdict.Pass, One(new HingeRangeCheck(), Of(2), "flex-inward").Verdict);
    }

    [Fact]
    public void A_good_line_turns_far_enough_and_metal_stops_it()
    {
        var model = Of(4);
        var findings = new HingeRangeCheck().Run(model, CancellationToken.None).ToDictionary(finding => finding.Rule);
        Assert.Equal(Verdict.Pass, findings["flex-inward"].Verdict);
        Assert.Equal(Verdict.Pass, findings["flex-outward"].Verdict);
        Assert.Equal(Verdict.Pass, findings["metal-stops-first"].Verdict);
        Assert.NotEqual(Verdict.Fail, findings["flex-sideways"].Verdict);
        Assert.NotEqual(Verdict.Fail, findings["twist"].Verdict);

        // The stops are set with the line taut, no later than asked: shared play brings them a little off that.
        var set = double.RadiansToDegrees(2 * model.Piece.Link.OutwardHalf);
        Assert.True(set <= model.Piece.Design.Brief.Hinge.OutwardStopDeg + 1e-9);
        Assert.InRange(findings["flex-outward"].Measured!.Value, set - 2, set + 2);
        Assert.DoesNotContain("stone", findings["flex-outward"].Where, StringComparison.Ordinal);
        Assert.All(findings.Values, finding => Assert.Equal(finding.Verdict == Verdict.Pass, finding.Cure.Length == 0));
    }

    [Fact]
    public void Stones_that_meet_before_metal_fail()
    {
        // Stones a third of a millimetre over size, set into links that were made for less.
        var good = Of(4);
        var large = RoundBrilliant.Cut(4.34, BrilliantProportions.Modern).Stone!;
        var planes = large.Body.Faces.Select(face => (face.Plane.Normal, face.Plane.Offset)).ToArray();
        var model = PieceModel.Of(
            good.Piece with { Stone = large, SeatedStone = Shape.Faceted(planes, large.Body.Bounds).Moved(0, 0, good.Piece.Link.GirdleHeightMm) },
            good.AsSet);
        var first = One(new HingeRangeCheck(), model, "metal-stops-first");
        Assert.Equal(Verdict.Fail, first.Verdict);
        Assert.NotEmpty(first.Cure);
        Assert.Equal(Verdict.Fail, One(new NeighbourGapCheck(), model, "stone-gap-in-range").Verdict);
    }

    [Fact]
    public void A_wrist_with_corners_asks_for_more_of_the_hinge()
    {
        var finding = One(new HingeRangeCheck(), Of(4, Tight), "flex-inward");
        Assert.True(finding.Limit > HingeRangeCheck.WornDeg(Of(4)) + 5, finding.ToString());
        Assert.Equal(finding.Measured >= finding.Limit ? Verdict.Pass : finding.Measured >= finding.Limit - 5 ? Verdict.Caution : Verdict.Fail, finding.Verdict);
    }

    [Fact]
    public void The_play_that_was_asked_for_is_measured_on_the_solids()
    {
        var play = One(new NeighbourGapCheck(), Of(4), "hinge-play");
        Assert.Equal(Verdict.Pass, play.Verdict);
        Assert.InRange(play.Measured!.Value, 0.095, 0.105);

        // Three times that play is more than the relief round the eye: the rails meet before the bar does.
        var loose = One(new NeighbourGapCheck(), Of(4, Loose), "hinge-play");
        Assert.Equal(Verdict.Fail, loose.Verdict);
        Assert.InRange(loose.Measured!.Value, 0.15, 0.28);
    }

    [Fact]
    public void Loose_hinges_shorten_the_line_by_all_their_play()
    {
        var play = One(new NeighbourGapCheck(), Of(4, Loose), "hinge-play").Measured!.Value;
        var finding = One(new PlayCheck(), Of(4, Loose), "play-shortens");
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.Equal((Of(4, Loose).Piece.Layout.Count + 1) * play, finding.Measured!.Value, 3);
    }

    [Theory]
    [InlineData("")]
    [InlineData("wrist.depth_ratio=0.5 wrist.exponent=4")] // Corners: one hinge turns far more than the others.
    public void Metal_is_watched_from_straight_to_worn(string wrist)
    {
        var model = Of(4, wrist);
        var joint = Joint.Of(model);
        var (link, hinge) = (model.Piece.Link, model.Piece.Hinge);
        var found = One(new NeighbourGapCheck(), model, "gap-in-hinge").Measured!.Value;

        // Each point of the eye's side by itself, in double precision, clear of the bearing: nowhere nearer than was found.
        var probes = joint.EyeSide[0].Probes;
        var points = Enumerable.Range(0, probes.Count).Select(probes.Point)
            .Where(p => Math.Abs(p.Y) > hinge.CheekInnerMm || double.Hypot(p.X - link.EyeCentre.X, p.Z - link.EyeCentre.Z) > hinge.EyeRadiusMm + hinge.PlayMm + hinge.ReliefMm)
            .ToList();
        var felt = new FeltPoints(probes, points.Contains);
        foreach (var turn in new[] { 0, 0.5, 1 })
        {
            var back = joint.Next(joint.SharedMm, double.DegreesToRadians(turn * HingeRangeCheck.WornDeg(model))).Inverse();
            var nearest = points.Min(p => joint.BarSide[0].Solid.Distance(back.Point(p)));
            Assert.InRange(nearest, found - 1e-3, 1);
            Assert.Equal(nearest, felt.Nearest(joint.BarSide[0].Solid, back).Gap, 1e-5);
        }
    }

    [Fact]
    public void A_narrow_eye_twists_too_far()
    {
        // A bar 0.10 looser than an eye 0.8 wide tilts by 7.1 degrees. Calculated.
        var finding = One(new HingeRangeCheck(), Of(3, "hinge.eye_width_mm=0.8 hinge.side_clearance_mm=0.2"), "twist");
        Assert.Equal(Verdict.Fail, finding.Verdict);
        Assert.InRange(finding.Measured!.Value, 6, 7.3);
    }

    [Theory]
    [InlineData(1.2, 30, 0.643)] // Gap 2 h tan(angle / 2) for a bend of 30 degrees about an axis 1.2 mm over the closing edges. Calculated.
    [InlineData(0.8, 20, 0.282)]
    public void Two_square_edges_close_the_gap_that_the_bend_needs(double height, double angleDeg, double gap)
    {
        Body Box(string name, double low, double high)
        {
            var solid = Shape.BoxBetween(new Vec3(low, -1, 0), new Vec3(high, 1, 1));
            return new Body(name, solid, ProbeSurface.Of(solid, Mesher.Run(solid, new MeshSettings(0.1, 0.01, true)).Mesh, 0.1));
        }

        Body left = Box("left", -2, -gap / 2), right = Box("right", gap / 2, 2);
        var turn = FirstContact.Turning([left], Pose.Identity, [right], Pose.Identity, new Vec3(0, 0, height), Vec3.UnitY, Math.PI / 2);

        // Each box's lower edge stands gap / 2 from the axis' plane: the right one alone must sweep the whole angle.
        Assert.True(turn.Touches);
        Assert.InRange(double.RadiansToDegrees(turn.Angle), angleDeg - 0.1, angleDeg + 0.1);
    }
}
