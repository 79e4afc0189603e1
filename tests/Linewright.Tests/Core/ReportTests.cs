using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Quote;
using Linewright.Solids.Meshing;
using Linewright.Tests.Cli;

namespace Linewright.Tests.Core;

public class ReportTests
{
    [Fact]
    public void The_report_has_the_keys_that_scripts_rely_on()
    {
        var root = JsonNode.Parse(Write(SampleReport.Of(SampleReport.Resolved(), Verdict.Fail)))!;
        Assert.Equal(["brief", "layout", "parts", "stones", "weights", "findings", "cautions"], Keys(root));
        Assert.Equal(
            ["count", "pitch_mm", "stone_gap_mm", "clasp_mm", "laid_flat_mm", "inside_circumference_mm", "wrist_radius_mm", "hinge_height_mm", "hinge_angle_deg", "play_mm", "candidates"],
            Keys(root["layout"]!));
        Assert.Equal(["name", "file", "count", "is_cast", "volume_mm3", "area_mm2", "triangles", "genus", "deviation_um", "finished_mm3", "mass_g", "cast_g"], Keys(root["parts"]![0]!));
        Assert.Equal(["count", "each_ct", "each_ct_trade", "total_ct"], Keys(root["stones"]!));
        Assert.Equal(["metal_finished_g", "metal_cast_g", "metal_to_melt_g", "alloys"], Keys(root["weights"]!));
        Assert.Equal(["rule", "verdict", "where", "measured", "limit", "unit", "source", "mark", "cure"], Keys(root["findings"]![0]!));
        Assert.Equal("fail", (string?)root["findings"]![0]!["verdict"]);
        Assert.Equal(3.428571, (double)root["layout"]!["pitch_mm"]!);
    }

    [Fact]
    public void A_part_weighs_more_as_cast_than_finished_and_the_parts_make_the_whole()
    {
        // Pinned, so that there is a drawn wire too; meshed coarsely.
        var model = CheckedPieces.White;
        var patterns = model.Piece.Parts.Select(part => Pattern.Of(part, Mesher.Run(part.AsCast, new MeshSettings(0.15, 0.04, true)), model.Piece.Design.Brief.Chain));
        var report = Reports.Of(new MadePiece(model, [.. patterns], CheckedPieces.WhiteCasting.Plan));
        Assert.Contains(report.Parts, part => !part.IsCast);
        Assert.All(report.Parts, part =>
        {
            Assert.True(part.IsCast ? part.CastG > part.MassG : part is { CastG: 0, MassG: > 0 }, part.Name);
            Assert.Equal(report.Brief.Alloy.MassOf(part.FinishedMm3).Value, part.MassG, 1e-12);

            // The file's mesh is the casting before it shrinks: 1 / (1 - 0.006) on a length. It is coarse here, and weighing is not.
            var file = report.Brief.Alloy.MassOf(part.VolumeMm3 * 0.994 * 0.994 * 0.994).Value;
            Assert.Equal(part.IsCast ? 1 : 0, part.CastG / file, 0.03);
        });
        Assert.Equal(report.Weights!.MetalFinishedG, report.Parts.Sum(part => part.MassG * part.Count), 1e-9);
        Assert.Equal(report.Weights.MetalCastG, report.Parts.Sum(part => part.CastG * part.Count), 1e-9);

        // One figure of the metal to melt, to the last bit: here, in the casting, and on the quote as a balance reads it.
        var casting = CheckedPieces.WhiteCasting.Plan.Report;
        Assert.Equal(casting.MetalToWeighOutG, report.Weights.MetalToMeltG);
        Assert.Equal(casting.MetalToWeighOutG, report.Weights.Alloys.Single(row => row.Metal == report.Brief.Metal).ToMeltG);
        Assert.Equal(casting.MetalToWeighOutG, (double)QuoteBasis.Of(CheckedPieces.WhiteCasting.Plan).MeltG, 0.005 + 1e-9);
        Assert.Equal(report.Weights.MetalCastG, casting.Trees.Sum(tree => tree.PartsG), 1e-9);
    }

    [Fact]
    public void A_finding_without_numbers_says_null()
    {
        var report = SampleReport.Of(SampleReport.Resolved()) with
        {
            Findings = [new Finding("fineness", Verdict.Caution, "metal", null, null, "", "ISO 9202", "from memory", "Have it assayed.")],
        };
        var finding = JsonNode.Parse(Write(report))!["findings"]![0]!.AsObject();
        Assert.True(finding.ContainsKey("measured") && finding["measured"] is null);
    }

    [Fact]
    public void A_report_is_the_same_bytes_in_every_culture()
    {
        var report = SampleReport.Of(SampleReport.Resolved(), Verdict.Pass);
        var plain = Write(report);
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NegativeSign = "~";
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal(plain, Write(report));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.DoesNotContain('\r', plain);
        Assert.EndsWith("}\n", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_bits_of_a_number_do_not_change_the_file()
        => Gen.Double[-1000, 1000].Sample(value =>
        {
            // Keep clear of the ties of rounding, where a last bit may decide.
            var steady = Math.Round(value, 5);
            var report = SampleReport.Of(SampleReport.Resolved());
            string With(double number) => Write(report with { Weights = new WeightsReport(number, -0.0, 0, []) });
            Assert.Equal(With(steady), With(Math.BitIncrement(Math.BitIncrement(steady))));
            Assert.Contains("\"metal_cast_g\": 0,", With(steady), StringComparison.Ordinal);
        }, iter: 200);

    [Fact]
    public void A_number_that_is_none_is_refused()
        => Assert.Throws<ArgumentOutOfRangeException>(() => Write(SampleReport.Of(SampleReport.Resolved()) with { Weights = new WeightsReport(double.NaN, 0, 0, []) }));

    [Theory]
    [InlineData("\"laid_flat_mm\": 178.0", "\"laid_flat_mm\": 178.0")]
    [InlineData("\"laid_flat_mm\": 178.0", "\"laid_flat_in\": 60")]
    [InlineData("\"laid_flat_mm\": 178.0", "\"wrist_mm\": 160")]
    [InlineData("\"diameter_mm\": 3.0", "\"diameter_mm\": 7.9")]
    [InlineData("\"diameter_mm\": 3.0", "\"diameter_mm\": 1.2")]
    [InlineData("\"metal\":", "\"hinge\": { \"kind\": \"eye-over-bar\", \"bar_mm\": 0.9 }, \"clasp\": { \"safety\": false, \"temper\": \"annealed\" }, \"metal\":")]
    public void A_resolved_brief_is_a_brief_that_resolves_to_itself(string plain, string changed)
    {
        var brief = SampleReport.Resolved(SampleReport.Brief.Replace(plain, changed));
        var written = JsonNode.Parse(Write(SampleReport.Of(brief)))!["brief"]!.ToJsonString();
        var again = BriefReader.Read(Encoding.UTF8.GetBytes(written), "b");
        Assert.Empty(again.Messages);
        Assert.Equal(written, JsonNode.Parse(Write(SampleReport.Of(BriefDefaults.Resolve(again.Brief!))))!["brief"]!.ToJsonString());
    }

    [Fact]
    public void Any_brief_that_is_accepted_resolves_to_a_brief_that_is_accepted()
        => Gen.Select(Gen.Bool, Gen.Double[0, 1]).Array[BriefFields.All.Count].Sample(picks =>
        {
            var assignments = BriefFields.All.Zip(picks)
                .Where(pair => pair.Second.Item1 && pair.First.Kind != FieldKind.Text && (pair.First.Group != "length" || pair.First.Name == "laid_flat_in"))
                .Select(pair => $"{pair.First.Path}={Pick(pair.First, pair.Second.Item2)}").ToList();
            var asked = BriefReader.Override(Encoding.UTF8.GetBytes(SampleReport.Brief), "b", assignments);
            if (asked.Brief is null)
            {
                // Only values that contradict each other may be refused: every one alone is in its range.
                Assert.All(asked.Faults, fault => Assert.Contains(fault.Path, (string[])["link.stone_gap_min_mm", "link.stone_gap_max_mm", "clasp.length_max_mm"]));
                return;
            }

            var written = JsonNode.Parse(Write(SampleReport.Of(BriefDefaults.Resolve(asked.Brief))))!["brief"]!.ToJsonString();
            Assert.Empty(BriefReader.Read(Encoding.UTF8.GetBytes(written), "b").Messages);
        }, iter: 500);

    private static string Pick(BriefField field, double at) => field.Kind switch
    {
        FieldKind.Flag => at < 0.5 ? "true" : "false",
        FieldKind.Choice => field.Choices[(int)(at * (field.Choices.Count - 1))],
        _ when field.Step > 0 => Number(field.Step * Math.Round((field.Low + at * (field.High - field.Low)) / field.Step)),
        _ => Number(field.Low + at * (field.High - field.Low)),
    };

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Keys(JsonNode node) => node.AsObject().Select(entry => entry.Key);

    private static string Write(Report report)
    {
        using var stream = new MemoryStream();
        ReportJson.Write(report, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
