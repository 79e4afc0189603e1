using Linewright.Casting;
using Linewright.Checks;
using Linewright.Layout;
using Linewright.Materials;
using Linewright.Parts;

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
        return new Report(brief, layout, [], stones, null, [], []) { StoneOrder = StoneOrders.Of(design) };
    }

    /// <summary>With parts and weights.</summary>
    public static Report Of(MadePiece made)
    {
        ArgumentNullException.ThrowIfNull(made);
        var brief = made.Model.Piece.Design.Brief;
        var weights = made.Casting.Weights;
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
            weights[index].FinishedMm3,
            brief.Alloy.MassOf(weights[index].FinishedMm3).Value,
            brief.Alloy.MassOf(weights[index].CastMm3).Value)).ToList();
        var all = MaterialTables.Alloys.All.Select(alloy => Weigh(alloy, made.Casting)).ToList();
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

    /// <summary>What a weighed piece weighs in an alloy, and what is weighed out for its trees.</summary>
    internal static AlloyWeightReport Weigh(Alloy alloy, CastingPlan casting)
    {
        double finished = 0, cast = 0;
        foreach (var (part, finishedMm3, castMm3) in casting.Weights)
        {
            finished += alloy.MassOf(finishedMm3).Value * part.Count;
            cast += alloy.MassOf(castMm3).Value * part.Count;
        }

        return new AlloyWeightReport(alloy.Key, finished, cast, alloy.MassOf(casting.MetalMm3).Value);
    }

    private static CandidateReport Candidate(LineCandidate candidate) => new(
        candidate.Count, candidate.PitchMm, candidate.GapMm, candidate.ClaspMm, candidate.StonesCt,
        candidate.Fit.InsideCircumferenceMm, candidate.Fit.HingeAngleDeg, candidate.Reason);
}
