using Linewright.Checks;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using static Linewright.Tests.Core.CheckModels;

namespace Linewright.Tests.Core;

public sealed class HingeChecksTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(2)]
    public void A_good_line_turns_far_enough_and_metal_stops_it(double diameter)
    {
        var model = Of(diameter);
        var findings = new HingeRangeCheck().Run(model, CancellationToken.None).ToDictionary(finding => finding.Rule);
        Assert.Equal(Verdict.Pass, findings["flex-inward"].Verdict);
        Assert.Equal(Verdict.Pass, findings["flex-outward"].Verdict);
        Assert.Equal(Verdict.Pass, findings["metal-stops-first"].Verdict);
        Assert.NotEqual(Verdict.Fail, findings["flex-sideways"].Verdict);
        Assert.NotEqual(Verdict.Fail, findings["twist"].Verdict);

        // The stops were set to 14 degrees with the line taut: shared play brings them a little off that.
        Assert.InRange(findings["flex-outward"].Measured!.Value, 10, 16);
        Assert.Contains("stop of the link on stop of the next", findings["flex-outward"].Where, StringComparison.Ordinal);
        Assert.All(findings.Values, finding => Assert.Equal(finding.Verdict == Verdict.Pass, finding.Cure.Length == 0));
    }

    [Fact]
    public void Stones_that_meet_before_metal_fail()
    {
        var model = Of(4, "link.stone_gap_mm=0.15 link.stone_gap_min_mm=0.05 hinge.outward_stop_deg=20");
        var first = One(new HingeRangeCheck(), model, "metal-stops-first");
        Assert.Equal(Verdict.Fail, first.Verdict);
        Assert.NotEmpty(first.Cure);
        Assert.Equal(Verdict.Fail, One(new NeighbourGapCheck(), model, "stone-gap-in-range").Verdict);
    }

    [Fact]
    public void A_wrist_with_corners_asks_for_more_than_the_hinge_gives()
    {
        var finding = One(new HingeRangeCheck(), Of(6.5, "wrist.depth_ratio=0.5 wrist.exponent=4"), "flex-inward");
        Assert.True(finding.Limit > 30, finding.ToString());
        Assert.Equal(finding.Measured >= finding.Limit ? Verdict.Pass : finding.Measured >= finding.Limit - 5 ? Verdict.Caution : Verdict.Fail, finding.Verdict);
        Assert.NotEqual(Verdict.Pass, finding.Verdict);
    }

    [Fact]
    public void The_play_that_was_asked_for_is_measured_on_the_solids()
    {
        foreach (var (model, asked) in new[] { (Of(4), 0.10), (Of(2), 0.10), (Of(4, "hinge.diametral_clearance_mm=0.30"), 0.30) })
        {
            var play = One(new NeighbourGapCheck(), model, "hinge-play");
            Assert.Equal(Verdict.Pass, play.Verdict);
            Assert.InRange(play.Measured!.Value, asked - 0.005, asked + 0.005);
        }
    }

    [Fact]
    public void Loose_hinges_shorten_the_line_by_all_their_play()
    {
        var loose = One(new PlayCheck(), Of(4, "hinge.diametral_clearance_mm=0.30"), "play-shortens");
        Assert.Equal(Verdict.Caution, loose.Verdict);
        Assert.InRange(loose.Measured!.Value, 0.295 * 35, 0.305 * 40);
        Assert.Equal(Verdict.Pass, One(new PlayCheck(), Of(4, "hinge.diametral_clearance_mm=0.04"), "play-shortens").Verdict);
    }

    [Fact]
    public void A_loose_hinge_twists_too_far()
    {
        // A bar 0.30 looser than its eye of 1.2 mm width tilts by 14 degrees: more than any line may. Calculated.
        var finding = One(new HingeRangeCheck(), Of(4, "hinge.diametral_clearance_mm=0.30"), "twist");
        Assert.Equal(Verdict.Fail, finding.Verdict);
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
