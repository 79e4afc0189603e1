using Linewright.Checks;
using Linewright.Parts;

namespace Linewright.Tests.Core;

public class MetalChecksTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void The_pull_that_a_bar_bears_follows_from_its_measured_size()
    {
        var piece = CheckedPieces.Yellow.Piece;
        var (bar, span) = StrengthCheck.BarAndSpan(piece);
        Assert.Equal(piece.Hinge.BarMm, bar, 2e-3);
        Assert.Equal(piece.Hinge.EyeWidthMm + 2 * piece.Hinge.SideClearanceMm, span, 0.02);

        // Source: Roark, bar on two supports, 8 F L / pi d3; annealed 300 MPa, from memory.
        var finding = Find(StrengthCheck.Of(piece), "bar-strength");
        Assert.Equal(300 * Math.PI * bar * bar * bar / (8 * span), finding.Measured!.Value, 1e-6);
        Assert.Equal(Verdict.Pass, finding.Verdict);
    }

    [Fact]
    public void The_worked_pin_of_08_over_3_reaches_298_MPa_at_20_N()
    {
        // Source: Roark, simply supported, load in the middle; worked value 298.416 MPa. Double shear at 115 MPa: 115.611 N.
        Assert.Equal(298.416, Beam.SupportedStressMPa(20, 3, 0.8, Beam.RoundMm4(0.8)), 1e-3);
        Assert.Equal(115.611, PinShear.ForceN(0.8, 115), 1e-3);
        Assert.Equal(0.5625, 100 * TongueSpring.Strain(0.4, 0.6, 8), 1e-9);
        Assert.Equal(5.0625, TongueSpring.ForceN(90_000, 3, 0.4, 0.6, 8), 1e-9);
    }

    [Fact]
    public void A_thin_pin_in_fine_gold_does_not_hold_a_bracelet()
    {
        // Hard fine gold yields at 200 MPa, annealed at 30: from memory.
        var findings = StrengthCheck.Of(CheckedPieces.Piece(2, "gold-999", ",\"hinge\":{\"kind\":\"pinned-knuckles\",\"bar_mm\":0.5}")).ToList();
        Assert.Equal(Verdict.Fail, Find(findings, "bar-strength").Verdict);
        Assert.Equal(Verdict.Fail, Find(findings, "eye-strength").Verdict);
        Assert.Contains("hinge.bar_mm", Find(findings, "bar-strength").Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_and_clasp_of_18_carat_hold_30_N_without_a_set()
    {
        foreach (var piece in new[] { CheckedPieces.Yellow.Piece, CheckedPieces.White.Piece })
        {
            var findings = StrengthCheck.Of(piece).ToList();
            Assert.Equal(["bar-strength", "eye-strength", "cheek-strength", "catch-strength"], findings.Select(f => f.Rule));
            Assert.All(findings, finding => Assert.True(finding.Measured > 30, finding.Where));
        }
    }

    [Fact]
    public void Joints_run_free_with_a_tenth_and_bind_with_four_hundredths()
    {
        var free = Find(RunningCheck.Of(CheckedPieces.Yellow.Piece), "joints-run-free");
        Assert.Equal(Verdict.Pass, free.Verdict);
        Assert.InRange(free.Measured!.Value, 99, 100);

        var tight = Find(RunningCheck.Of(CheckedPieces.Piece(4, "gold-750-yellow", ",\"hinge\":{\"diametral_clearance_mm\":0.04}")), "joints-run-free");
        Assert.Equal(Verdict.Fail, tight.Verdict);

        // (0.04 - 0.01) / 0.02236 = 1.342 deviations: 0.0899 bind, so 38 all run free with 0.0280. Source: normal tables.
        Assert.Equal(2.80, tight.Measured!.Value, 0.15);
        Assert.Contains("hinge.diametral_clearance_mm", tight.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void Nickel_is_told_and_palladium_white_gold_passes()
    {
        var nickel = Find(MetalCheck.Of(CheckedPieces.Piece(4, "gold-750-white-ni")), "nickel-release");
        Assert.Equal(Verdict.Caution, nickel.Verdict);
        Assert.Equal(11, nickel.Measured);
        Assert.Contains("0.5", nickel.Source, StringComparison.Ordinal); // REACH XVII entry 27: 0.5 micrograms per cm2 and week
        Assert.Equal(Verdict.Pass, Find(MetalCheck.Of(CheckedPieces.White.Piece), "nickel-release").Verdict);
    }

    [Theory]
    [InlineData("gold-750-yellow", Verdict.Pass)] // ISO 9202 lists 750
    [InlineData("silver-925", Verdict.Pass)] // ISO 9202 lists 925
    [InlineData("platinum-950-ru", Verdict.Pass)] // ISO 9202 lists 950
    [InlineData("gold-417-yellow", Verdict.Caution)] // 10 ct is sold in some countries only
    [InlineData("brass-85", Verdict.Caution)] // no precious metal
    public void A_fineness_is_nominal_and_listed_or_told(string metal, Verdict verdict)
    {
        var findings = MetalCheck.Of(CheckedPieces.Piece(4, metal)).ToList();
        Assert.Equal(verdict, Find(findings, "fineness").Verdict);
        Assert.Equal(metal.StartsWith("platinum", StringComparison.Ordinal), findings.Exists(finding => finding.Rule == "casting-metal"));
        Assert.All(findings.Where(finding => finding.Rule == "cadmium-lead"), finding => Assert.Equal(Verdict.Pass, finding.Verdict));
    }

    [Fact]
    public void Heavy_rhodium_is_a_caution()
        => Assert.Equal(Verdict.Caution, Find(MetalCheck.Of(CheckedPieces.Piece(4, "gold-750-white-pd", ",\"finish\":{\"rhodium_um\":1.2}")), "rhodium").Verdict);

    [Fact]
    public void The_line_closes_to_its_length_and_to_a_ring()
    {
        foreach (var model in new[] { CheckedPieces.Yellow, CheckedPieces.White })
        {
            var findings = new FitCheck().Run(model, Stop).ToList();
            Assert.All(findings, finding => Assert.Equal(Verdict.Pass, finding.Verdict));
            Assert.Equal(177.8, Find(findings, "closes").Measured!.Value, 1e-9);
            Assert.Contains("trade length M", Find(findings, "size-label").Where, StringComparison.Ordinal);

            // Moving a closed curve out by the hinge height adds 2 pi h (Steiner); straight links lose a little to the corners.
            var inside = Find(findings, "fit").Measured!.Value;
            Assert.InRange(inside, 177.8 - 2 * Math.PI * model.Piece.Hinge.HeightMm - 2, 177.8 - 2 * Math.PI * model.Piece.Hinge.HeightMm);
        }
    }

    [Fact]
    public void A_line_that_is_not_as_long_as_asked_fails()
    {
        var piece = CheckedPieces.Yellow.Piece;
        var longer = piece.Design.Brief with { Length = piece.Design.Brief.Length with { LaidFlatMm = 178 } };
        var finding = FitCheck.Closing(FitCheck.FlatLength(CheckedPieces.Yellow), piece with { Design = piece.Design with { Brief = longer } });
        Assert.Equal(Verdict.Fail, finding.Verdict);
        Assert.Equal(178, finding.Limit);
    }

    [Fact]
    public void Cautions_fit_the_metal_and_the_stone()
    {
        var plain = Cautions.For(CheckedPieces.Design(4, "gold-750-yellow").Brief);
        var nickel = Cautions.For(CheckedPieces.Design(4, "gold-750-white-ni").Brief);
        var platinum = Cautions.For(CheckedPieces.Design(4, "platinum-950-ru").Brief);
        Assert.DoesNotContain(plain, text => text.Contains("nickel", StringComparison.Ordinal));
        Assert.Contains(nickel, text => text.Contains("11 % nickel", StringComparison.Ordinal));
        Assert.Contains(platinum, text => text.Contains("phosphate", StringComparison.Ordinal));
        Assert.All([.. plain, .. platinum], text => Assert.False(System.Text.RegularExpressions.Regex.IsMatch(text, "[0-9] C\\b", System.Text.RegularExpressions.RegexOptions.NonBacktracking), text));
        Assert.Contains(plain, text => text.Contains("36 months", StringComparison.Ordinal));
        Assert.Contains(plain, text => text.StartsWith("Diamond at the bench", StringComparison.Ordinal));
        Assert.Equal(plain.Count, plain.Distinct(StringComparer.Ordinal).Count());
        var named = Cautions.For(CheckedPieces.Design(4, "gold-750-yellow").Brief with { Name = "\u6e2f" });
        Assert.Equal([.. plain, named[^1]], named);
        Assert.StartsWith("Paper cannot show a letter of the piece's name (U+6E2F)", named[^1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40.393432, 55.0, "%", "40.4 %, limit 55 %")]
    [InlineData(7.951, 8.0, "deg", "7.95 deg, limit 8 deg")]
    [InlineData(0.0899, 0.05, "mm", "0.09 mm, limit 0.05 mm")]
    [InlineData(4.0, 4.0, "", "4, limit 4")]
    [InlineData(1.475, null, "N", "1.48 N")]
    [InlineData(null, null, "mm", "")]
    public void A_finding_is_as_exact_as_its_unit_bears_and_never_looks_like_its_limit(double? measured, double? limit, string unit, string said)
        => Assert.Equal(said, new Finding("rule", Verdict.Caution, "where", measured, limit, unit, "test", "assumed", "").Figures());

    private static Finding Find(IEnumerable<Finding> findings, string rule) => findings.First(finding => finding.Rule == rule);
}
