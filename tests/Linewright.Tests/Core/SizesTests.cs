using System.Text;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Layout;
using Linewright.Parts;

namespace Linewright.Tests.Core;

/// <summary>The sizes that a bench is asked for, by the shortest brief there is.</summary>
public class SizesTests
{
    private static readonly double[] Stones = [1.5, 2, 2.25, 2.5, 2.9, 3, 4, 5, 6.5, 8];

    /// <summary>Stones and metals whose line must be sound.</summary>
    public static TheoryData<double, string> Sound =>
    [
        .. Stones.Select(mm => new TheoryDataRow<double, string>(mm, "gold-750-yellow")),
        .. Stones.Where(mm => mm >= 2).Select(mm => new TheoryDataRow<double, string>(mm, "silver-925")),
    ];

    [Theory]
    [MemberData(nameof(Sound))]
    public void No_check_of_a_plain_line_fails(double diameter, string metal)
    {
        var model = PieceModel.Build(PartsBuilder.Build(Solve(diameter, metal, 177.8)), stop: TestContext.Current.CancellationToken);
        var findings = PieceChecks.Run(model, stop: TestContext.Current.CancellationToken);
        Assert.True(findings.Count > 40, $"only {findings.Count} findings");
        Assert.Empty(findings.Where(finding => finding.Verdict == Verdict.Fail).Select(finding => finding.ToString()));

        // The claws that nobody asked to be otherwise are the trade's.
        Assert.Empty(findings.Where(finding => finding.Rule.StartsWith("claw-", StringComparison.Ordinal) && finding.Verdict != Verdict.Pass).Select(finding => finding.ToString()));
    }

    [Theory]
    [InlineData("gold-750-yellow")]
    [InlineData("gold-585-white-pd")]
    [InlineData("platinum-950-ru")]
    [InlineData("silver-925")]
    public void Every_length_closes_with_a_clasp_that_can_be_worn_or_is_refused_with_a_way_out(string metal)
        => Assert.All(
            from diameter in Stones
            from length in (double[])[160, 170, 180, 190, 200]
            select (diameter, length),
            asked =>
            {
                var design = Solve(asked.diameter, metal, asked.length);
                if (design.Chosen is { } line)
                {
                    Assert.Equal(asked.length, line.Count * line.PitchMm + line.ClaspMm, 1e-9);
                    Assert.InRange(line.ClaspMm, ClaspRange.LowMm, ClaspRange.HighMm);
                    return;
                }

                // Silver needs joints that part the smallest stones.
                Assert.True(metal == "silver-925" && asked.diameter < 1.8, design.Refusal);
                Assert.Contains("take stones from 1.8 mm up", design.Refusal, StringComparison.Ordinal);
                Assert.Contains("link.stone_gap_max_mm", design.Refusal, StringComparison.Ordinal);
            });

    private static LineDesign Solve(double diameter, string metal, double length)
    {
        var json = FormattableString.Invariant(
            $$"""{"name":"t","stone":{"diameter_mm":{{diameter}}},"metal":"{{metal}}","length":{"laid_flat_mm":{{length}}},"process":{"mesh_deviation_um":20} }""");
        var read = BriefReader.Read(Encoding.UTF8.GetBytes(json), "t");
        Assert.Empty(read.Messages);
        return LineDesign.Solve(BriefDefaults.Resolve(read.Brief!));
    }
}
