using System.Text.Json.Nodes;
using Linewright.Brief;
using Linewright.Layout;
using Linewright.Making;
using Linewright.Parts;
using Linewright.Studio.Pieces;

namespace Linewright.Studio.Wire;

/// <summary>What the numbers panel shows: the report as far as the layout goes, derived measures, and the counts just outside.</summary>
public static class PieceNumbers
{
    /// <summary>Takes a few milliseconds: nothing is meshed.</summary>
    public static JsonObject Of(SolvedPiece solved)
    {
        ArgumentNullException.ThrowIfNull(solved);
        var design = solved.Design;
        return new JsonObject
        {
            ["report"] = ReportNode(Reports.Of(design)),
            ["derived"] = Derived(solved),
            ["candidate_count"] = design.Plan!.CandidateCount,
            ["misses"] = new JsonArray([.. design.Plan.Misses.Select(Miss)]),
        };
    }

    /// <summary>A report as every door gives it.</summary>
    public static JsonNode ReportNode(Report report)
    {
        using var text = new MemoryStream();
        ReportJson.Write(report, text);
        return JsonNode.Parse(text.ToArray())!;
    }

    // What the parts made of measures that the brief left open.
    private static JsonObject Derived(SolvedPiece solved)
    {
        var (design, hinge) = (solved.Design, solved.Design.Hinge!);
        var link = LinkForm.Derive(design.Spec!, hinge, design.Chosen!.PitchMm);
        var clasp = ClaspForm.Derive(design.Spec!, hinge, Math.Max(link.WidthMm, design.LineWidthMm), design.Chosen.ClaspMm);
        return new JsonObject
        {
            ["hinge.bar_mm"] = hinge.BarMm,
            ["hinge.eye_wall_mm"] = hinge.EyeRadiusMm - hinge.HoleMm / 2,
            ["hinge.eye_width_mm"] = hinge.EyeWidthMm,
            ["hinge.cheek_mm"] = hinge.CheekMm,
            ["hinge.diametral_clearance_mm"] = hinge.HoleMm - hinge.BarMm,
            ["link.rail_mm"] = link.RailMm,
            ["link.width_mm"] = link.WidthMm,
            ["link.table_mm"] = link.TableHeightMm,
            ["clasp.tongue_mm"] = clasp.StripMm,
            ["clasp.width_mm"] = clasp.WidthMm,
            ["clasp.height_mm"] = clasp.HeightMm,
            ["clasp.least_mm"] = ClaspForm.LeastLength(design.Spec!, hinge, link.WidthMm),
            ["hinge.kind"] = hinge.Kind == HingeKind.EyeOverBar ? "eye-over-bar" : "pinned-knuckles",
        };
    }

    private static JsonObject Miss(LineMiss miss) => new() { ["count"] = miss.Count, ["reason"] = miss.Reason };
}
