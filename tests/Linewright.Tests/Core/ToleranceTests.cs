using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Tolerance;

namespace Linewright.Tests.Core;

/// <summary>The study of tolerances against laws that are known: sums of normals, products, and what a tree shares.</summary>
public class ToleranceTests
{
    private const int Lot = 20_000;

    [Theory]
    [InlineData(0u, 0u, 0u, 0u, 0ul, 0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u)] // Source: Random123 1.x, kat_vectors, philox4x32 10. From memory.
    [InlineData(0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xfffffffffffffffful, 0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu)]
    [InlineData(0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u, 0x299f31d0a4093822ul, 0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u)]
    public void Counted_random_numbers_are_those_of_the_paper(uint a, uint b, uint c, uint d, ulong key, uint e, uint f, uint g, uint h)
        => Assert.Equal((e, f, g, h), Philox.Words(a, b, c, d, key));

    [Fact]
    public void The_quantile_undoes_the_normal_law()
    {
        Assert.Equal(1.959963984540054, InverseNormal.Of(0.975), 1e-14); // Source: Abramowitz and Stegun (1964), 26.2, to 15 digits by Wichura
        Assert.Equal(0, InverseNormal.Of(0.5));
        for (var x = -6.0; x <= 6; x += 0.25)
        {
            // From the side where the share is small, so that it has all its digits.
            var share = NormalLaw.Above(Math.Abs(x));
            Assert.Equal(-Math.Abs(x), InverseNormal.Of(share), 1e-12);
        }
    }

    [Fact]
    public void In_lanes_the_quantile_has_the_same_bits()
    {
        var shares = Enumerable.Range(1, 1003).Select(i => i / 1004.0).ToArray();
        var lanes = (double[])shares.Clone();
        InverseNormal.Replace(lanes);
        Assert.Equal(shares.Select(InverseNormal.Of), lanes);
    }

    [Fact]
    public void Drawn_numbers_are_standard_and_independent_from_stream_to_stream()
    {
        var scatter = new Scatter(7);
        double[] a = new double[40_000], b = new double[40_000];
        scatter.Fill(3, 0, a);
        scatter.Fill(3, 1, b);
        var error = 4 / Math.Sqrt(a.Length);
        Assert.InRange(a.Average(), -error, error);
        Assert.InRange(a.Average(x => x * x), 1 - error * Math.Sqrt(2), 1 + error * Math.Sqrt(2)); // The variance of a square is 2
        Assert.InRange(a.Zip(b, (x, y) => x * y).Average(), -error, error);
        Assert.InRange(a.Average(x => x * x * x * x), 3 - error * Math.Sqrt(96), 3 + error * Math.Sqrt(96)); // Fourth moment 3, its variance 105 - 9
        var part = new double[5];
        scatter.Fill(3, 0, part);
        Assert.Equal(a[..5], part);
    }

    [Theory]
    [InlineData(81, 263, 25.53, 36.62)] // Source: Newcombe (1998), Stat. Med. 17, 857, table I, score method. From memory.
    [InlineData(15, 148, 6.24, 16.05)]
    [InlineData(0, 20, 0, 16.11)]
    [InlineData(1, 29, 0.61, 17.18)]
    public void A_counted_share_has_the_score_interval(int well, int lot, double low, double high)
    {
        var chance = Chance.Of(well, lot);
        Assert.Equal((low, high), (Math.Round(chance.LowPercent, 2), Math.Round(chance.HighPercent, 2)));
    }

    [Fact]
    public void A_quantile_has_bounds_from_the_lot_itself()
    {
        var lot = Enumerable.Range(1, 1000).Select(i => (double)i).ToArray();
        Assert.Equal(new Quantile(500, 469, 531), Quantile.Of(lot, 0.5)); // 500 -+ 1.96 sqrt(1000 / 4) = 469.01 and 530.99
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(20)]
    [InlineData(49)]
    public void What_all_joints_share_follows_the_known_integral(int joints)
    {
        // Correlated by a half and judged at the mean, all are above it once in (joints + 1). Source: the rank of one of n + 1 equal
        // normals; for two Sheppard (1899), 1/4 + asin(1/2) / 2 pi = 1/3.
        Assert.Equal(1.0 / (joints + 1), RunningFit.AllRunFree(joints, 0.03, 0.02, 0.03, 0.02), 1e-10);
    }

    [Fact]
    public void Without_anything_shared_the_integral_is_the_product()
    {
        Assert.Equal(RunningFit.AllRunFree(38, 0.09, 0.03), RunningFit.AllRunFree(38, 0.09, 0.03, 0, 1e-7), 1e-6);
        Assert.Equal(1 - NormalLaw.Above(2), RunningFit.AllRunFree(38, 0.09, 0, 0.03, 0.03), 1e-12);
    }

    [Fact]
    public void The_drawn_lot_follows_the_known_integral()
    {
        // Three joints, correlated by a half, judged at the mean: one lot in four.
        var line = Line() with { Links = 2, SideMm = JointSpread.LeastClearanceMm, Joint = new JointSpread(0, 0.02, 0.02) };
        var free = Study(line, Lot).RunsFree;
        Assert.InRange(25, free.LowPercent - 0.5, free.HighPercent + 0.5);
        Assert.Equal(25, free.ClosedFormPercent!.Value, 1e-6);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(48)]
    public void Joints_that_scatter_on_their_own_multiply(int links)
    {
        var line = Line() with { Links = links, BoreMm = 0.075, Joint = new JointSpread(0.022, 0, 0) };
        var each = 1 - NormalLaw.Above((0.075 - 0.01) / 0.022);
        var free = Study(line, Lot).RunsFree;
        Assert.Equal(100 * Math.Pow(each, links + 1), free.ClosedFormPercent!.Value, 1e-9);
        Assert.InRange(free.ClosedFormPercent.Value, free.LowPercent - 0.5, free.HighPercent + 0.5);
    }

    [Theory]
    [InlineData(60, 0.0011)]
    [InlineData(60, 0)]
    [InlineData(20, 0.0011)]
    public void The_length_adds_up_as_independent_normals_do(int linksPerTree, double scale)
    {
        var line = Line() with { LinksPerTree = linksPerTree, ScaleSpread = scale };
        var length = Study(line, Lot).Length;

        // Written out here: links and clasp by their sizes, joints by half their bore, trees by what hangs on them.
        var hangs = linksPerTree == 60 ? (double[])[177.8 - 49 * 0.045] : [20 * 3.4, 20 * 3.4, 8 * 3.4 + 12.395];
        var variance = 48 * 0.05 * 0.05 / 2 + 2 * 0.05 * 0.05 * 0.75 + 49 * Math.Pow(0.02236 / 2, 2) + hangs.Sum(part => Math.Pow(scale * part, 2));
        Assert.Equal(177.8, length.NominalMm, 1e-9);
        Assert.Equal(Math.Sqrt(variance), length.ClosedFormDeviationMm, 1e-12);
        Assert.InRange(length.MeanMm, 177.8 - 2 * length.MeanErrorMm, 177.8 + 2 * length.MeanErrorMm);
        Assert.InRange(length.DeviationMm / Math.Sqrt(variance), 1 - 4 / Math.Sqrt(2.0 * Lot), 1 + 4 / Math.Sqrt(2.0 * Lot)); // Error of a deviation: 1 / sqrt(2 n)
        Assert.InRange(177.8 - 1.6448536269514722 * Math.Sqrt(variance), length.LowMm.Low - 0.01, length.LowMm.High + 0.01); // 5 % of the normal law
        Assert.InRange(177.8 + 1.6448536269514722 * Math.Sqrt(variance), length.HighMm.Low - 0.01, length.HighMm.High + 0.01);
    }

    [Fact]
    public void Trees_share_their_scale_and_several_trees_average_it_out()
    {
        var line = Line() with { SizeSpreadMm = 0, Joint = new JointSpread(0, 0.02, 0), ScaleSpread = 0.001 };
        double one = Study(line, Lot).Length.DeviationMm, four = Study(line with { LinksPerTree = 12 }, Lot).Length.DeviationMm;
        Assert.Equal(0.001 * (177.8 - 49 * 0.045), one, 0.004);
        Assert.InRange(four / one, 0.47, 0.56); // Half for four equal trees; the last carries the clasp
    }

    [Fact]
    public void Shares_of_the_variance_are_those_of_the_sum_and_add_up()
    {
        var study = Study(Line(), Lot);
        Assert.Equal(100, study.Sensitivity.Sum(row => row.LengthSharePercent), 1e-9);
        var total = Math.Pow(study.Length.ClosedFormDeviationMm, 2);
        Share(ToleranceSource.TreeScale, Math.Pow(0.0011 * (177.8 - 49 * 0.045), 2));
        Share(ToleranceSource.JointFit, 49 * Math.Pow(0.02236 / 2, 2));
        Share(ToleranceSource.Sizes, 49.5 * 0.05 * 0.05 / 2 + 0.75 * 0.05 * 0.05);
        Assert.Equal(ToleranceSource.Sizes, study.MattersMostForLength);

        void Share(ToleranceSource source, double variance)
            => Assert.Equal(100 * variance / total, study.Sensitivity.Single(row => row.Tolerance == source).LengthSharePercent, 2.0);
    }

    [Fact]
    public void The_tolerance_that_costs_most_is_named_and_its_gain_is_what_the_exact_process_gives()
    {
        var line = Line() with { BoreMm = 0.06 };
        var study = Study(line, Lot);
        Assert.Equal(ToleranceSource.JointFit, study.MattersMostForYield);
        var exact = Study(line with { Joint = line.Joint with { BoreMm = 0 } }, Lot);
        Assert.Equal(exact.Yield.Percent, study.Sensitivity[0].YieldWithoutPercent, 1e-9); // Same numbers drawn, so the same pieces
        Assert.Equal(exact.Yield.Percent - study.Yield.Percent, study.Sensitivity[0].YieldGainPercent, 1e-9);
    }

    [Fact]
    public void With_the_solved_gap_99_of_100_run_free()
    {
        var line = Line();
        var gap = Study(line, Lot).Gap;
        Assert.InRange(gap.DiametralClosedFormMm, gap.DiametralClearanceMm.Low, gap.DiametralClearanceMm.High);
        Assert.InRange(gap.SideClosedFormMm!.Value, gap.SideClearanceMm.Low, gap.SideClearanceMm.High);
        Assert.InRange(gap.Together.Percent, 98.8, 99.2);

        // Another lot, drawn with that gap.
        var other = Study(line with { BoreMm = gap.DiametralClearanceMm.Value, SideMm = 2 * gap.SideClearanceMm.Value }, Lot, seed: 2).RunsFree;
        Assert.InRange(other.Percent, 98.7, 99.3);
        Assert.Equal(99, other.ClosedFormPercent!.Value, 0.2);
    }

    [Fact]
    public void Walls_fall_under_their_limit_as_often_as_the_normal_law_says()
    {
        var line = Line() with { ScaleSpread = 0, FacesSpreadMm = 0, Walls = [new WallReading("link", "upper rail", 48, 0.60, 0.50), new WallReading("link", "deep", 48, 3, 0.5)] };
        var study = Study(line, Lot);
        var wall = Assert.Single(study.Walls); // The deep one is never in danger
        var sigma = Math.Sqrt(0.05 * 0.05 + 2 * 0.02 * 0.02);
        var one = NormalLaw.Above(0.1 / sigma);
        Assert.Equal(sigma, wall.SpreadMm, 1e-12);
        Assert.Equal(48 * one, wall.UnderEach, 4 * Math.Sqrt(48 * one / Lot));
        Assert.Equal(100 * Math.Pow(1 - one, 48), wall.NonePercent, 1.5);
        Assert.Equal(0.60 + sigma * InverseNormal.Of(1 - Math.Pow(0.95, 1.0 / 48)), wall.ThinnestMm, 0.004);
        Assert.Equal(0.50 - sigma * InverseNormal.Of(1 - Math.Pow(0.99, 1.0 / 48)), wall.ToDrawMm, 0.006);
        Assert.Equal(study.WallsHold.Percent, wall.NonePercent, 1e-9);
        Assert.Equal(100, study.Sensitivity.Sum(row => row.WallSharePercent!.Value), 1e-9);
    }

    [Fact]
    public void The_catch_holds_as_often_as_the_normal_law_says()
    {
        var line = Line() with { FacesSpreadMm = 0 };
        line = line with { Clasp = line.Clasp with { OverlapMm = 0.25 } };
        var sigma = Math.Sqrt(Math.Pow(2 * 0.01, 2) + 0.02 * 0.02 + 0.025 * 0.025); // Strip twice, its set, a filed lip
        var holds = Study(line, Lot).ClaspHolds;
        Assert.InRange(100 * (1 - NormalLaw.Above(0.05 / sigma)), holds.LowPercent - 0.5, holds.HighPercent + 0.5);
    }

    [Fact]
    public void The_same_lot_is_the_same_lot_and_another_is_another()
    {
        var line = Line();
        var one = Study(line, 2_000);
        var (same, other) = (Study(line, 2_000), Study(line, 2_000, seed: 9));
        Assert.Equal((one.Length, one.Yield, one.Gap), (same.Length, same.Yield, same.Gap));
        Assert.NotEqual(one.Length, other.Length);

        // The first pieces of a larger lot are those of the smaller: numbers are counted, not drawn one after the other.
        Assert.Equal(LotDraw.Of(line, 128, 1, CancellationToken.None).Length, LotDraw.Of(line, 500, 1, CancellationToken.None).Length[..128]);
    }

    [Theory]
    [InlineData(99, 1)]
    [InlineData(1_000_001, 1)]
    [InlineData(1_000, -1)]
    public void A_lot_of_no_sense_is_refused(int pieces, long seed)
        => Assert.Throws<ArgumentOutOfRangeException>(() => Study(Line(), pieces, seed));

    [Fact]
    public void A_changed_tolerance_moves_the_yield()
    {
        double Free(string more) => Study(CheckedPieces.Piece(4, "gold-750-yellow", more)).RunsFree.Percent;
        var usual = Free("");
        Assert.InRange(usual, 97, 100);
        Assert.InRange(Free(""","hinge":{"diametral_clearance_mm":0.06}"""), 0, usual - 20);
        Assert.InRange(Free(""","hinge":{"diametral_clearance_mm":0.12}"""), usual, 100);
        var brief = CheckedPieces.Piece(4, "gold-750-yellow").Design.Brief;
        var line = LineVariations.Of(CheckedPieces.Piece(4, "gold-750-yellow"), []);
        var loose = line with { Joint = JointSpread.Of(brief with { Process = brief.Process with { FitSpreadUm = 40 } }, HingeKind.EyeOverBar) };
        Assert.InRange(Study(loose).RunsFree.Percent, 0, usual - 20);
    }

    [Fact]
    public void Checks_and_study_speak_of_the_same_joints()
    {
        var piece = CheckedPieces.Yellow.Piece;
        var findings = RunningCheck.Of(piece).ToList();
        var study = Study(piece);
        Assert.Equal(
            findings.Aggregate(1.0, (all, finding) => all * finding.Measured!.Value / 100) * 100,
            study.RunsFree.ClosedFormPercent!.Value,
            1e-9);
        Assert.Equal(piece.Layout.LaidFlatMm, study.Length.NominalMm, 1e-6);
    }

    private static ToleranceReport Study(LineVariation line, int pieces = ToleranceStudy.UsualPieces, long seed = ToleranceStudy.UsualSeed)
        => ToleranceStudy.Of(line, pieces, seed, TestContext.Current.CancellationToken);

    private static ToleranceReport Study(Piece piece) => ToleranceStudy.Of(piece, [], stop: TestContext.Current.CancellationToken);

    /// <summary>48 links of 3.4 mm and a clasp: seven inches. Spreads of the usual route.</summary>
    private static LineVariation Line() => new()
    {
        Links = 48,
        LinksPerTree = 60,
        LinkMm = 3.4,
        BoxMm = 8,
        TongueMm = 177.8 - 49 * 0.045 - 48 * 3.4 - 8,
        BoreMm = 0.09,
        SideMm = 0.16,
        Clasp = new ClaspVariation(0.2, 0.12, 0.10, 0.45, 0.01, 0.2, 0.5, 0.01, 0.02),
        Walls = ImmutableArray<WallReading>.Empty,
        ScaleSpread = 0.0011,
        FacesSpreadMm = 0.005,
        SizeSpreadMm = 0.05,
        Joint = new JointSpread(0.02236, 0.0354, 0.01),
        LossSpreadMm = 0.02,
    };
}
