using System.Collections.Immutable;
using Linewright.Checks;
using Linewright.Layout;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;

namespace Linewright.Making;

/// <summary>Fills the report from what was solved, made and checked.</summary>
public static class Reports
{
    /// <summary>As far as the layout goes.</summary>
    /// <exception cref="ArgumentException">The design was refused.</exception>
    public static Report Of(LineDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (design is not { Chosen: { } chosen, Plan: { } plan, Spec: { } spec, Hinge: { } hinge })
        {
            throw new ArgumentException($"the design was refused: {design.Refusal}", nameof(design));
        }

        var brief = design.Brief;
        var layout = new LayoutReport(
            chosen.Count, chosen.PitchMm, chosen.GapMm, chosen.ClaspMm, chosen.LaidFlatMm,
            chosen.Fit.InsideCircumferenceMm, chosen.Fit.RadiusMm, hinge.HeightMm, chosen.Fit.HingeAngleDeg, 2 * hinge.PlayMm,
            [.. plan.Candidates.Select(Candidate)]);
        double each = spec.Stone.WeightCt(brief.Species.SpecificGravity);
        var stones = new StonesReport(
            chosen.Count, each, spec.Stone.TradeWeightCt(brief.Species.QuotedSpecificGravity), chosen.Count * each);
        return new Report(brief, layout, [], stones, null, [], []);
    }

    /// <summary>With parts and weights.</summary>
    public static Report Of(MadePiece made)
    {
        ArgumentNullException.ThrowIfNull(made);
        var brief = made.Model.Piece.Design.Brief;
        var finished = ImmutableArray.CreateRange(made.Patterns.Select((pattern, index)
            => MassProperties.Of(made.Model.AsSet[index].Mesh, pattern.Part.AsSet).Volume));
        var parts = made.Patterns.Select((pattern, index) => new PartReport(
            pattern.Part.Name,
            pattern.File,
            pattern.Part.Count,
            pattern.Part.IsCast,
            pattern.Mass.Volume,
            pattern.Mass.Area,
            pattern.Mesh.TriangleCount,
            pattern.Surface.Genus,
            pattern.Outcome.CertifiedDeviationMm * 1000,
            finished[index],
            brief.Alloy.MassOf(finished[index]).Value,
            pattern.Part.IsCast ? brief.Alloy.MassOf(pattern.CastMm3).Value : 0)).ToList();
        var all = MaterialTables.Alloys.All.Select(alloy => Weigh(alloy, parts, made, brief.Process.TreePercent)).ToList();
        var own = all.First(row => row.Metal == brief.Metal);
        all.Sort((a, b) => a.FinishedG != b.FinishedG ? a.FinishedG.CompareTo(b.FinishedG) : string.CompareOrdinal(a.Metal, b.Metal));
        return Of(made.Model.Piece.Design) with { Parts = parts, Weights = new WeightsReport(own.FinishedG, own.CastG, own.ToMeltG, all) };
    }

    /// <summary>With findings and cautions.</summary>
    public static Report WithFindings(Report report, IReadOnlyList<Finding> findings, IReadOnlyList<string> cautions)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report with { Findings = findings, Cautions = cautions };
    }

    private static AlloyWeightReport Weigh(Alloy alloy, List<PartReport> parts, MadePiece made, double treePercent)
    {
        double finished = 0, cast = 0;
        for (var i = 0; i < parts.Count; i++)
        {
            finished += alloy.MassOf(parts[i].FinishedMm3).Value * parts[i].Count;
            cast += parts[i].IsCast ? alloy.MassOf(made.Patterns[i].CastMm3).Value * parts[i].Count : 0;
        }

        return new AlloyWeightReport(alloy.Key, finished, cast, cast * (1 + treePercent / 100));
    }

    private static CandidateReport Candidate(LineCandidate candidate) => new(
        candidate.Count, candidate.PitchMm, candidate.GapMm, candidate.ClaspMm, candidate.StonesCt,
        candidate.Fit.InsideCircumferenceMm, candidate.Fit.HingeAngleDeg, candidate.Reason);
}
