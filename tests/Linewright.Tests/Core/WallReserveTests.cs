using System.Text;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Tolerance;

namespace Linewright.Tests.Core;

/// <summary>Walls as they come out of a casting: how many pieces keep them, and the reserve that makes 99 of 100 keep them.</summary>
public class WallReserveTests
{
    // Two faces kept as cast, 0.02 between them, and as much again that the tree shares.
    private static readonly WallScatter Half = new(0.02, 0.02, 0.01, 0, 0.01, 48, 60);

    [Fact]
    public void Walls_on_their_own_multiply()
    {
        // Source: product rule. 48 bars, each two deviations over its limit.
        var alone = Half with { FacesMm = 0 };
        Assert.Equal(Math.Pow(1 - NormalLaw.Above(2), 48), alone.NoneUnder([Bar(0.04)], 0), 1e-12);
        Assert.Equal(Math.Pow(1 - NormalLaw.Above(3), 48) * (1 - NormalLaw.Above(2)), alone.NoneUnder([Bar(0.06), new("box", "bar", 1, 0.54, 0.5) { PolishedFaces = 0 }], 0), 1e-12);
    }

    [Fact]
    public void Walls_that_share_half_of_their_variance_are_all_kept_once_in_n_and_one()
        => Assert.Equal(1.0 / 49, Half.NoneUnder([Bar(0)], 0), 1e-10); // The shared normal is the lowest of 49 equal ones. Source: exchangeability

    [Fact]
    public void Trees_share_nothing_with_each_other()
    {
        // 48 links on trees of 24: 1/25 each. The clasp hangs on the last tree: 26 equal normals there.
        var two = Half with { PartsPerTree = 24 };
        Assert.Equal(1.0 / 25 / 25, two.NoneUnder([Bar(0)], 0), 1e-10);
        Assert.Equal(1.0 / 25 / 26, two.NoneUnder([Bar(0), new("box", "bar", 1, 0.5, 0.5) { PolishedFaces = 0 }], 0), 1e-10);
    }

    [Fact]
    public void A_shortfall_and_a_thicker_wall_are_the_same_room()
    {
        Assert.Equal(Half.NoneUnder([Bar(0.13)], 0), Half.NoneUnder([Bar(0)], 0.13), 1e-12);
        Assert.Equal(Half.NoneUnder([Bar(0.13)], 0), Half.NoneUnder([Bar(0)], 0, 0.13), 1e-12);
        var reserve = Half.ReserveMm([Bar(0)], 0)!.Value;
        Assert.InRange(Half.NoneUnder([Bar(0)], 0, reserve), 0.99, 1);
        Assert.InRange(Half.NoneUnder([Bar(0)], 0, reserve - 0.01), 0, 0.99);
        Assert.Null((Half with { SizeMm = 0.2 }).ReserveMm([Bar(0)], 0));
    }

    [Fact]
    public void A_lot_keeps_its_walls_as_often_as_the_integral_says()
    {
        var piece = CheckedPieces.Yellow.Piece;
        var walls = WallReading.Of(piece, PieceChecks.Walls(CheckedPieces.Yellow, TestContext.Current.CancellationToken));
        foreach (var onTree in new[] { 60, 20 })
        {
            var line = LineVariations.Of(piece, walls) with { LinksPerTree = onTree };
            var study = ToleranceStudy.Of(line, 20_000, stop: TestContext.Current.CancellationToken);
            Assert.InRange(study.WallsAccepted.ClosedFormPercent!.Value, study.WallsAccepted.LowPercent - 0.6, study.WallsAccepted.HighPercent + 0.6);
            Assert.InRange(study.WallsAccepted.Percent, study.WallsHold.Percent, 100);
            Assert.DoesNotContain(study.Walls, wall => wall.Feature is "claw tip" or "bearing" or "tongue strip");
        }
    }

    [Fact]
    public void The_check_and_the_study_speak_of_the_same_walls()
    {
        var findings = PieceChecks.Walls(CheckedPieces.Yellow, TestContext.Current.CancellationToken);
        var study = ToleranceStudy.Of(CheckedPieces.Yellow.Piece, findings, stop: TestContext.Current.CancellationToken);
        var finding = Assert.Single(findings, finding => finding.Rule == "walls-after-casting");
        Assert.Equal(study.WallsAccepted.ClosedFormPercent!.Value, finding.Measured!.Value, 1e-9);
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.StartsWith(FormattableString.Invariant($"set process.wall_reserve_mm to {study.Reserves[0].ReserveMm:0.00},"), finding.Cure, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3.0, "gold-750-white-pd")]
    [InlineData(2.0, "gold-750-white-pd")]
    [InlineData(4.0, "silver-925")]
    public void The_reserve_that_is_printed_gives_what_is_promised(double diameter, string metal)
    {
        var (plain, before) = Studied(diameter, metal, 0);
        Assert.InRange(before.WallsAccepted.HighPercent, 0, 99);
        var tried = WallReserves.Tried(plain.Design.Brief, before, TestContext.Current.CancellationToken).Reserves;
        Assert.Equal([0.13, 0], tried.Select(reserve => reserve.ShortfallMm));
        foreach (var reserve in tried.Where(reserve => reserve.ReserveMm is not null))
        {
            Assert.InRange(reserve.TriedPercent!.Value, 99, 100);

            // As a designer does it: write the figure into the brief, and run it.
            var (piece, after) = Studied(diameter, metal, reserve.ReserveMm!.Value);
            var chance = reserve.ShortfallMm > 0 ? after.WallsAccepted : after.WallsHold;
            Assert.Equal(reserve.TriedPercent.Value, chance.ClosedFormPercent!.Value, 1e-9);
            Assert.InRange(chance.Percent, 98.5, 100);
            Assert.True(piece.Design.Spec!.DrawnKnuckleMm <= piece.Hinge.EyeRadiusMm - piece.Hinge.HoleMm / 2 + 1e-9);
        }

        Assert.NotNull(tried[0].ReserveMm);
    }

    [Fact]
    public void A_size_that_the_brief_gives_stays_as_it_is_given()
    {
        var given = CheckedPieces.Design(4, "gold-750-yellow", ""","hinge":{"bar_mm":1.2,"eye_wall_mm":0.6}""").Brief;
        var piece = PartsBuilder.Build(LineDesign.Solve(given with { Process = given.Process with { WallReserveMm = 0.15 } }));
        Assert.Equal(1.2, piece.Hinge.BarMm);
        Assert.Equal(0.6, piece.Hinge.EyeRadiusMm - piece.Hinge.HoleMm / 2, 1e-9);
        Assert.Equal(0.7, piece.Hinge.CheekMm, 1e-9); // 0.5, what is always spared, and the reserve
        Assert.Equal(0.9, piece.Clasp.WallMm, 1e-9);
    }

    private static WallReading Bar(double over) => new("link", "bar", 48, 0.5 + over, 0.5) { PolishedFaces = 0 };

    private static (Piece Piece, ToleranceReport Study) Studied(double diameter, string metal, double reserve)
    {
        var json = FormattableString.Invariant(
            $$$"""{"name":"t","stone":{"cut":"round","species":"diamond","diameter_mm":{{{diameter}}}},"metal":"{{{metal}}}","length":{"laid_flat_mm":177.8},"process":{"mesh_deviation_um":20,"wall_reserve_mm":{{{reserve}}}}}""");
        var piece = PartsBuilder.Build(LineDesign.Solve(BriefDefaults.Resolve(BriefReader.Read(Encoding.UTF8.GetBytes(json), "test").Brief!)));
        var stop = TestContext.Current.CancellationToken;
        return (piece, ToleranceStudy.Of(piece, PieceChecks.Walls(PieceModel.Build(piece, stop: stop), stop), stop: stop));
    }
}
