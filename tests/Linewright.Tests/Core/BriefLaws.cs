using System.Text.RegularExpressions;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Layout;
using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>What holds for every brief, whatever is asked: a line that closes and can be made, or a refusal that helps.</summary>
/// <remarks>Drawn from one seed, so that a run repeats; a failure names the seed and the lines that give its brief by themselves.</remarks>
public class BriefLaws
{
    private const string Seed = "0N0XIzNsQ0O2", OtherSeed = "0000IzNsQ0O2";

    // A wall of a link is ten such cells.
    private const double CellMm = 0.08, DeviationMm = 0.03;

    [Fact]
    public void Every_brief_is_laid_out_to_close_or_refused_with_advice_that_works()
        => AssertLaidOut(Seed, 1000);

    [Fact]
    [Trait("Speed", "slow")]
    public void Many_briefs_are_laid_out_to_close_or_refused_with_advice_that_works()
        => AssertLaidOut(OtherSeed, 3000);

    [Fact]
    public void Every_part_of_any_brief_is_one_closed_solid_and_neighbours_stay_apart()
        => AssertNone(PartFaults(Seed, 12));

    [Fact]
    [Trait("Speed", "slow")]
    public void Every_part_of_many_briefs_is_one_closed_solid_and_neighbours_stay_apart()
        => AssertNone(PartFaults(OtherSeed, 60));

    private static void AssertNone(List<string> faults)
        => Assert.True(faults.Count == 0, FormattableString.Invariant($"{faults.Count} faults\n{string.Join('\n', faults)}"));

    private static void AssertLaidOut(string seed, int briefs)
    {
        var closed = 0;
        var faults = new List<string>();
        foreach (var (here, recipe) in BriefRecipe.From(seed, briefs))
        {
            var (design, refusal) = recipe.Solve();
            closed += design is null ? 0 : 1;
            var fault = design is null ? BadAdvice(recipe, refusal) : NotClosed(design);
            if (fault.Length > 0)
            {
                faults.Add($"{fault}\n{here}: {recipe}");
            }
        }

        AssertNone(faults);

        // Neither side of the law is empty.
        Assert.InRange(closed, briefs / 2, 99 * briefs / 100);
    }

    private static List<string> PartFaults(string seed, int lines)
    {
        var faults = new List<string>();
        foreach (var (here, recipe) in BriefRecipe.From(seed, 4 * lines).Where(drawn => drawn.Recipe.Solve().Design is not null).Take(lines))
        {
            var piece = PartsBuilder.Build(recipe.Solve().Design!);
            faults.AddRange(PartFaults(piece).Select(fault => $"{fault}\n{here}: {recipe}"));
        }

        return faults;
    }

    private static List<string> PartFaults(Piece piece)
    {
        var faults = new List<string>();
        var settings = new MeshSettings(CellMm, DeviationMm, false);
        var asSet = new List<MeshOutcome>();
        foreach (var part in piece.Parts)
        {
            asSet.Add(Mesher.Run(part.AsSet, settings));
            MeshOutcome[] states = part.IsCast ? [asSet[^1], Mesher.Run(part.AsCast, settings)] : [asSet[^1]];
            foreach (var outcome in states)
            {
                var surface = Topology.Inspect(outcome.Mesh);
                if (outcome.Status != MeshStatus.Meshed || !surface.IsSound || surface.Components != 1)
                {
                    faults.Add($"{part.Name} {(outcome == asSet[^1] ? "as set" : "as cast")}: {outcome.Status}, {surface}");
                }
            }
        }

        var model = PieceModel.Of(piece, [.. asSet]);
        foreach (var gap in new NeighbourGapCheck().Run(model, CancellationToken.None).Where(finding => finding.Rule is "stone-gap-in-range" or "gap-in-hinge"))
        {
            if (!(gap.Measured > 0))
            {
                faults.Add(gap.ToString());
            }
        }

        var turn = new HingeRangeCheck().Run(model, CancellationToken.None).ToList();
        faults.AddRange(turn
            .Where(finding => finding.Rule == "metal-stops-first" && finding.Verdict == Verdict.Fail)
            .Select(finding => finding.ToString()));
        faults.AddRange(turn
            .Where(finding => finding.Rule == "flex-inward" && !(finding.Measured >= HingeRangeCheck.WornDeg(model)))
            .Select(finding => finding.ToString()));
        return faults;
    }

    /// <summary>What does not close, in words; empty where all does.</summary>
    private static string NotClosed(LineDesign design)
    {
        var (chosen, asked) = (design.Chosen!, design.Brief.Length);
        var length = chosen.Count * chosen.PitchMm + chosen.ClaspMm;
        if (Math.Abs(length - (asked.LaidFlatMm ?? chosen.LaidFlatMm)) > 1e-9)
        {
            return FormattableString.Invariant($"{length} mm laid flat, {asked.LaidFlatMm ?? chosen.LaidFlatMm} wanted");
        }

        // The ring through the hinge axes, by the tangent of half the angle that each piece covers. Calculated.
        double Half(double piece, double radius) => Math.Atan(piece / 2 / (radius + chosen.Fit.HingeHeightMm));
        var turn = 2 * (chosen.Count * Half(chosen.PitchMm, chosen.Fit.RadiusMm) + Half(chosen.ClaspMm, chosen.Fit.RadiusMm));
        if (Math.Abs(turn - 2 * Math.PI) > 1e-9)
        {
            return FormattableString.Invariant($"the round ring covers {turn} rad");
        }

        if (asked is { WristMm: { } wrist, EaseMm: { } ease } && Math.Abs(2 * Math.PI * chosen.Fit.RadiusMm - wrist - ease) > 1e-6)
        {
            return FormattableString.Invariant($"inside {2 * Math.PI * chosen.Fit.RadiusMm} mm on a wrist of {wrist} with an ease of {ease}");
        }

        // Round the wrist of the brief every piece begins where the one before it ends, and all turn once.
        var fit = WristFit.Solve(chosen.Chain, design.Brief.Wrist.DepthRatio, design.Brief.Wrist.Exponent);
        if (!fit.Fits)
        {
            return fit.Reason;
        }

        Vec3 End(LinkPlacement piece, int side) => piece.Pose.Point(
            new Vec3(side * (piece.IsClasp ? chosen.ClaspMm : chosen.PitchMm) / 2, 0, chosen.Fit.HingeHeightMm));
        var places = fit.Fit.Placements;
        var open = places.Zip([.. places[1..], places[0]], (one, next) => (End(next, -1) - End(one, 1)).Length).Max();
        var round = fit.Fit.HingeAngles.Sum();
        return places.Length == chosen.Count + 1 && open <= 1e-6 && Math.Abs(round - 2 * Math.PI) <= 1e-9
            ? ""
            : FormattableString.Invariant($"{places.Length} pieces round the wrist, open by {open} mm, turned by {round} rad");
    }

    /// <summary>Why a refusal does not help, in words; empty where what it advises is accepted.</summary>
    private static string BadAdvice(BriefRecipe recipe, string refusal)
    {
        (string Pattern, string Field)[] ways =
        [
            (@"set link\.stone_gap_max_mm to ([\d.]+)", "link.stone_gap_max_mm"),
            (@"the shortest clasp whose tongue lasts in \S+ is ([\d.]+) mm long", "clasp.length_max_mm"),
            (@"that is wrist_mm ([\d.]+)", "length.wrist_mm"),
            (@"nearest that work are ([\d.]+) and [\d.]+ mm$", "length.laid_flat_mm"),
            (@"(?:longest|shortest) that works is ([\d.]+) mm$", "length.laid_flat_mm"),
        ];
        foreach (var (pattern, field) in ways)
        {
            if (Regex.Match(refusal, pattern, RegexOptions.None, TimeSpan.FromSeconds(1)) is { Success: true } said)
            {
                var (design, still) = recipe.With($"{field}={said.Groups[1].Value}").Solve();
                return design is null ? $"refused: {refusal}\nand, followed: {still}" : "";
            }
        }

        return BriefFields.All.Any(field => refusal.Contains(field.Path, StringComparison.Ordinal)) ? "" : $"no advice: {refusal}";
    }
}
