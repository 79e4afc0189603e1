using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Parts;

namespace Linewright.Tests.Core;

/// <summary>What a finding says to change is changed, and the piece measured again: a cure must bring the figure nearer to its limit.</summary>
public partial class CuresTests
{
    // How far a field is raised or lowered where the cure does not say: a step that a designer would take.
    private const double Step = 0.15;

    [Theory]
    [InlineData("flex-outward", "stone.diameter_mm=2")]
    [InlineData("flex-outward", "hinge.outward_stop_deg=6")]
    [InlineData("flex-sideways", "stone.diameter_mm=4", "hinge.eye_width_mm=1.3")]
    [InlineData("twist", "stone.diameter_mm=2.5")]
    [InlineData("opening", "stone.diameter_mm=3")]
    [InlineData("opening", "stone.diameter_mm=4", "link.opening_percent=50")]
    [InlineData("bar-strength", "stone.diameter_mm=4", "hinge.bar_mm=0.9")]
    [InlineData("eye-strength", "stone.diameter_mm=4", "metal=silver-925", "hinge.eye_wall_mm=0.5", "hinge.eye_width_mm=1")]
    [InlineData("hinge-side-clearance", "stone.diameter_mm=4", "hinge.side_clearance_mm=0.04")]
    [InlineData("joints-run-free", "stone.diameter_mm=4", "hinge.diametral_clearance_mm=0.05")]
    [InlineData("smallest-wall", "stone.diameter_mm=4", "hinge.eye_wall_mm=0.45")]
    [InlineData("claw-diameter", "stone.diameter_mm=4", "setting.claw_mm=0.7")]
    public void A_cure_brings_the_figure_nearer_to_its_limit(string rule, params string[] brief)
    {
        var before = Worst(rule, brief);
        Assert.NotEqual(Verdict.Pass, before.Verdict);
        var cured = Cured(before, brief);
        var after = Worst(rule, cured);
        Assert.True(
            after.Verdict == Verdict.Pass || Miss(after) < Miss(before) - 1e-3,
            FormattableString.Invariant($"{rule}: {before.Measured:0.###} became {after.Measured:0.###}, limit {after.Limit:0.###}, by {string.Join(' ', cured.Except(brief))}: {before.Cure}"));
    }

    private static double Miss(Finding finding) => Math.Abs(finding.Measured!.Value - finding.Limit!.Value);

    private static Finding Worst(string rule, IEnumerable<string> assignments)
    {
        var model = PieceModel.Build(PartsBuilder.Build(LineDesign.Solve(BriefDefaults.Resolve(Read(assignments)))), stop: TestContext.Current.CancellationToken);
        var found = PieceChecks.Run(model, stop: TestContext.Current.CancellationToken).Where(finding => finding.Rule == rule).ToImmutableArray();
        Assert.NotEmpty(found);
        return found.MaxBy(finding => finding.Verdict)!;
    }

    /// <summary>The brief with the first field that the cure names changed as it says.</summary>
    private static ImmutableArray<string> Cured(Finding finding, string[] brief)
    {
        var said = Instruction().Match(finding.Cure);
        Assert.True(said.Success, finding.Cure);
        var field = said.Groups["field"].Value;
        var value = said.Groups["value"].Success
            ? double.Parse(said.Groups["value"].Value, CultureInfo.InvariantCulture)
            : Read(brief).Number(field) ?? Derived(field, brief);
        value *= said.Groups["way"].Value switch { "raise" => 1 + Step, "lower" => 1 - Step, _ => 1 };
        return [.. brief.Where(line => !line.StartsWith(field + "=", StringComparison.Ordinal)), FormattableString.Invariant($"{field}={value:0.####}")];
    }

    private static double Derived(string field, string[] brief) => field switch
    {
        "link.stone_gap_mm" => BriefDefaults.Resolve(Read(brief)).Link.StoneGapMm,
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "no default known here"),
    };

    private static DesignBrief Read(IEnumerable<string> assignments)
    {
        var read = BriefReader.Override(
            Encoding.UTF8.GetBytes("""{"name":"t","stone":{"diameter_mm":3},"metal":"gold-750-white-pd","length":{"laid_flat_mm":177.8},"process":{"mesh_deviation_um":20}}"""),
            "test",
            [.. assignments]);
        return read.Brief ?? throw new InvalidOperationException(string.Join("; ", read.Faults));
    }

    [GeneratedRegex(@"(?<way>raise|lower|set) (?<field>[a-z]+\.[a-z_]+)(?: to (?<value>[0-9.]+[0-9]))?", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Instruction();
}
