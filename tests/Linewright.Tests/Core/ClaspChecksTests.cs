using Linewright.Assembly;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

public class ClaspChecksTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void A_caliper_reads_boxes_and_balls_to_a_micrometre()
    {
        // Calculated: a chord at height 0.6 of a ball of radius 1 is 2 x 0.8 long.
        Assert.Equal(1.6, Caliper.Across(Shape.Ball(1), new Vec3(0.1, 0, 0.6), Vec3.UnitX), 2e-6);
        var slot = Shape.Box(4, 4, 4).Minus(Shape.Box(5, 1.2, 5));
        Assert.Equal(1.2, Caliper.Across(slot, Vec3.Zero, Vec3.UnitY), 2e-6);
        Assert.Equal(1.4, Caliper.Across(slot, new Vec3(0, 1, 0), Vec3.UnitY), 2e-6);
        Assert.Equal(double.PositiveInfinity, Caliper.ToSurface(slot, Vec3.Zero, Vec3.UnitX, 5));
        Assert.Equal(0.35, Caliper.Thickness(Shape.Box(5, 5, 0.35).Moved(Pose.Turn(Vec3.UnitY, 0.4)), Vec3.Zero + 0.01 * Vec3.UnitZ), 2e-6);
    }

    [Fact]
    public void The_tongue_of_hard_yellow_gold_lasts_and_is_pressed_by_a_thumb()
    {
        var piece = CheckedPieces.Yellow.Piece;
        var (thickness, length, width) = TongueCheck.Leaf(piece);

        // The solid is what its form says it should be.
        Assert.Equal(piece.Clasp.StripMm, thickness, 2e-3);
        Assert.Equal(piece.Clasp.LeafMm, length, 5e-3);
        Assert.Equal(piece.Clasp.StripWidthMm, width, 2e-3);

        var strain = Find(TongueCheck.Of(piece), "tongue-strain");
        Assert.Equal(Verdict.Pass, strain.Verdict);
        Assert.Equal("", strain.Cure);

        // Yield 700 MPa over 90 GPa, of which 0.7: 0.544 %. Source: Gold Usage (1978), from memory.
        Assert.Equal(0.5444, strain.Limit!.Value, 1e-4);
        Assert.Equal(100 * 1.5 * 0.35 * 0.55 / (length * length), strain.Measured!.Value, 2e-3);
        Assert.InRange(Find(TongueCheck.Of(piece), "push-force").Measured!.Value, 3, 8);
    }

    [Fact]
    public void An_annealed_tongue_keeps_a_set_where_a_hard_one_lasts()
    {
        // The same solid judged soft: as if the strip had been soldered. Annealed 300 MPa over 90 GPa: 0.333 %. From memory.
        var hard = CheckedPieces.Yellow.Piece;
        var brief = hard.Design.Brief;
        var soft = hard with { Design = hard.Design with { Brief = brief with { Clasp = brief.Clasp with { Temper = Materials.Temper.Annealed } } } };
        var strain = Find(TongueCheck.Of(soft), "tongue-strain");
        Assert.Equal(Verdict.Fail, strain.Verdict);
        Assert.Equal(0.2333, strain.Limit!.Value, 1e-4);
        Assert.Contains("clasp.length_min_mm", strain.Cure, StringComparison.Ordinal);
        Assert.Equal(Verdict.Caution, Find(MetalCheck.Of(hard), "tongue-temper").Verdict);
        Assert.Equal(Verdict.Fail, Find(MetalCheck.Of(soft), "tongue-temper").Verdict);
    }

    [Fact]
    public void A_thick_strip_is_too_stiff_and_a_thin_one_too_slack()
    {
        // Force grows with the cube of the strip's thickness over the cube of the leaf, which only grows with the root.
        Assert.Equal(Verdict.Pass, Force(0.35));
        Assert.Equal(Verdict.Caution, Force(0.6));
        Assert.Equal(Verdict.Caution, Force(0.25));
        static Verdict Force(double strip) => Find(TongueCheck.Of(CheckedPieces.Piece(
            4, "gold-750-yellow", FormattableString.Invariant($",\"clasp\":{{\"tongue_mm\":{strip}}}"))), "push-force").Verdict;
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_catch_holds_at_rest_and_lets_go_when_pressed(bool isYellow)
    {
        var model = isYellow ? CheckedPieces.Yellow : CheckedPieces.White;
        var findings = new CatchCheck().Run(model, Stop).ToList();
        Assert.All(findings, finding => Assert.Equal(Verdict.Pass, finding.Verdict));
        Assert.InRange(Find(findings, "catch-overlap").Measured!.Value, 0.35, 0.8);
        Assert.InRange(Find(findings, "catch-release").Measured!.Value, 0.015, 0.1);
        Assert.True(Find(findings, "catch-holds").Measured < 0);
        Assert.Equal(3, findings.Count(finding => finding.Rule == "tongue-slide"));
    }

    [Fact]
    public void A_push_that_is_not_pressed_far_enough_does_not_free_the_catch()
    {
        // The catch stands 0.45 behind its lip: pressed by 0.30 it must still strike it.
        var model = CheckedPieces.Yellow;
        var finding = CatchCheck.Released(model.Piece, model.BodyOf(PartRole.Box), 0.30, Stop);
        Assert.Equal(Verdict.Fail, finding.Verdict);
        Assert.True(finding.Measured < 0);
        Assert.NotEqual("", finding.Cure);
    }

    [Fact]
    public void The_clasp_is_of_a_usual_size_and_its_safety_snaps()
    {
        var findings = new ClaspCheck().Run(CheckedPieces.Yellow, Stop).ToList();
        Assert.All(findings, finding => Assert.Equal(Verdict.Pass, finding.Verdict));
        var clasp = CheckedPieces.Yellow.Piece.Clasp;
        var sizes = findings.Where(finding => finding.Rule == "clasp-size").Select(finding => finding.Measured!.Value).ToArray();
        Assert.Equal(clasp.LengthMm, sizes[0], 1e-9);
        Assert.Equal(clasp.WidthMm, sizes[1], 2e-3);
        Assert.Equal(clasp.HeightMm, sizes[2], 2e-3);

        // Ball 1.24 over a loop of 1.16. Common practice: a 1.2 ball.
        Assert.Equal(SafetyBuilder.BallDiameterMm - SafetyBuilder.LoopInsideMm, Find(findings, "safety").Measured!.Value, 5e-3);
    }

    [Fact]
    public void A_narrow_line_has_a_wide_clasp_and_no_safety_is_a_caution()
    {
        // A line of a millimetre less: the box keeps its least width and is too wide for it.
        var model = CheckedPieces.White;
        var narrow = model.Piece with { Link = model.Piece.Link with { BaseHalfYMm = 0.5, ClawReachMm = 0.6, Hinge = model.Piece.Hinge with { CheekMm = 0.1 } } };
        var white = new ClaspCheck().Run(PieceModel.Of(narrow, model.AsSet), Stop).ToList();
        Assert.Contains(white, finding => finding is { Rule: "clasp-size", Verdict: Verdict.Caution } && finding.Where.Contains("across", StringComparison.Ordinal));

        var findings = ClaspCheck.SafetyOf(model.Piece with { Parts = [.. model.Piece.Parts.Where(part => part.Role != PartRole.Safety)] }, model).ToList();
        Assert.Equal(Verdict.Caution, Assert.Single(findings).Verdict);
    }

    [Fact]
    public void End_links_turn_on_the_clasp_as_far_as_the_wrist_asks()
    {
        var findings = new ClaspHingeCheck().Run(CheckedPieces.Yellow, Stop).ToList();
        Assert.Equal(4, findings.Count);
        Assert.All(findings.Where(f => f.Rule == "clasp-hinge-inward"), finding =>
        {
            Assert.Equal(Verdict.Pass, finding.Verdict);

            // Cut for 36 degrees, and a little more since nothing there is sharp.
            Assert.InRange(finding.Measured!.Value, 33, 75);
        });
        Assert.All(findings.Where(f => f.Rule == "clasp-hinge-outward"), finding => Assert.InRange(finding.Measured!.Value, 5, 30));
    }

    private static Finding Find(IEnumerable<Finding> findings, string rule) => findings.First(finding => finding.Rule == rule);
}
