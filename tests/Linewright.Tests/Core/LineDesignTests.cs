using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Linewright.Brief;
using Linewright.Layout;
using Linewright.Parts;

namespace Linewright.Tests.Core;

/// <summary>What a design says to a brief that cannot be, and how long a clasp it takes.</summary>
public class LineDesignTests
{
    private const string Brief = """{"name":"t","stone":{"diameter_mm":3},"metal":"gold-750-white-pd","length":{"laid_flat_mm":178}}""";

    // Gaps that cannot move and a clasp that cannot either: few lengths close.
    private static readonly string[] Stiff =
    [
        "stone.diameter_mm=8", "link.stone_gap_mm=0.9", "link.stone_gap_min_mm=0.9", "link.stone_gap_max_mm=0.9", "clasp.length_min_mm=14", "clasp.length_max_mm=14.5",
    ];

    public static TheoryData<string> Metals => [.. ((string[])["gold-750-yellow", "gold-375-yellow", "platinum-950-ru", "silver-925", "palladium-950-ru", "brass-85"])];

    [Theory]
    [MemberData(nameof(Metals))]
    public void The_least_clasp_that_a_refusal_names_is_accepted(string metal)
    {
        var refused = Solve($"metal={metal}", "clasp.length_max_mm=5");
        Assert.Null(refused.Chosen);
        Assert.Contains("raise clasp.length_max_mm to that", refused.Refusal, StringComparison.Ordinal);
        var advised = Regex.Match(refused.Refusal, @"(?<least>[\d.]+) mm long", RegexOptions.NonBacktracking).Groups["least"].Value;
        Assert.Equal("", Solve($"metal={metal}", $"clasp.length_max_mm={advised}").Refusal);

        // And no more than the rounding is asked for.
        var less = double.Parse(advised, CultureInfo.InvariantCulture) - 0.01;
        Assert.NotEqual("", Solve($"metal={metal}", string.Create(CultureInfo.InvariantCulture, $"clasp.length_max_mm={less:F2}")).Refusal);
    }

    [Theory]
    [InlineData("laid_flat_mm", @"nearest that work are ([\d.]+) and ([\d.]+) mm$")]
    [InlineData("wrist_mm", @"that is wrist_mm ([\d.]+) or ([\d.]+)$")]
    public void The_lengths_that_a_refusal_names_are_accepted(string field, string said)
    {
        var refused = Enumerable.Range(1700, 90)
            .Select(tenths => Solve([.. Stiff, string.Create(CultureInfo.InvariantCulture, $"length.{field}={tenths / 10.0}")]))
            .First(design => design.Chosen is null);
        var advised = Regex.Match(refused.Refusal, said, RegexOptions.NonBacktracking);
        Assert.True(advised.Success, refused.Refusal);
        Assert.All(advised.Groups.Values.Skip(1), length => Assert.Equal("", Solve([.. Stiff, $"length.{field}={length.Value}"]).Refusal));
    }

    [Fact]
    public void Every_layout_that_is_proposed_has_a_clasp_of_a_usual_length()
        => Assert.All(
            from metal in (string[])["gold-750-white-pd", "platinum-950-ru", "silver-925", "brass-85"]
            from diameter in (double[])[1.8, 2, 3, 4, 6, 8]
            from length in (double[])[150, 165.5, 178, 191, 203]
            select Solve($"metal={metal}", FormattableString.Invariant($"stone.diameter_mm={diameter}"), FormattableString.Invariant($"length.laid_flat_mm={length}")),
            design =>
            {
                Assert.NotEmpty(design.Plan!.Candidates);

                // Unless the tongue alone needs more than is usual.
                var least = ClaspForm.LeastLength(design.Spec!, design.Hinge!, LinkForm.Derive(design.Spec!, design.Hinge!, design.Chosen!.PitchMm).WidthMm);
                Assert.All(design.Plan.Candidates, c => Assert.True(
                    c.ClaspMm >= ClaspRange.UsualLowMm - 1e-6 && (c.ClaspMm <= ClaspRange.UsualHighMm + 1e-6 || least > ClaspRange.UsualHighMm),
                    FormattableString.Invariant($"{design.Brief.Metal} {design.Brief.Stone.DiameterMm} mm: {c.ClaspMm} mm, least {least}")));
            });

    [Fact]
    public void A_longer_clasp_is_taken_where_none_of_a_usual_length_closes_and_where_it_is_asked_for()
    {
        // Gaps that cannot move: at some lengths only a clasp over 16 mm is left.
        string[] fixedGap = ["stone.diameter_mm=8", "link.stone_gap_mm=0.9", "link.stone_gap_min_mm=0.9", "link.stone_gap_max_mm=0.9"];
        var clasps = Enumerable.Range(170, 10)
            .Select(mm => Solve([.. fixedGap, FormattableString.Invariant($"length.laid_flat_mm={mm}")]).Chosen!.ClaspMm).ToList();
        Assert.Contains(clasps, mm => mm > ClaspRange.UsualHighMm);
        Assert.Contains(clasps, mm => mm <= ClaspRange.UsualHighMm);
        Assert.All(Solve("clasp.length_min_mm=18").Plan!.Candidates, c => Assert.InRange(c.ClaspMm, 18 - 1e-9, 23.5 + 1e-9));
        Assert.Contains(Solve("clasp.length_max_mm=20").Plan!.Candidates, c => c.ClaspMm > ClaspRange.UsualHighMm);
    }

    private static LineDesign Solve(params string[] assignments)
    {
        var read = BriefReader.Override(Encoding.UTF8.GetBytes(Brief), "t", assignments);
        Assert.Empty(read.Messages);
        return LineDesign.Solve(BriefDefaults.Resolve(read.Brief!));
    }
}
