using System.Text.Json.Nodes;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Outlines;
using Linewright.Solids.Space;

namespace Linewright.Studio.Wire;

/// <summary>The printer's plates from above: where each pattern stands, and the lines by which it is drawn. mm; x to the right, y to the back, origin front left.</summary>
public static class PlateView
{
    private const int Decimals = 3;

    /// <summary>The report's casting, the plates, the trees from the side, and each sprued pattern's visible lines about the foot of its sprue.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="patterns">The planned patterns, meshed.</param>
    /// <param name="report">The report that holds it.</param>
    public static JsonObject Of(ResolvedBrief brief, CastingPatterns patterns, JsonNode report)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(patterns);
        ArgumentNullException.ThrowIfNull(report);
        var plan = patterns.Plan;
        var lines = new JsonArray[plan.Parts.Length];
        Parallel.For(0, lines.Length, index => lines[index] = LinesOf(plan.Parts[index], patterns.Meshes[index], brief.Process.MeshDeviationUm / 1000));
        return new JsonObject
        {
            ["casting"] = report["casting"]!.DeepClone(),
            ["plate_mm"] = new JsonArray(brief.Process.PlateXMm, brief.Process.PlateYMm, brief.Process.PlateZMm),
            ["plates"] = new JsonArray([.. plan.Plates.Select((plate, index) => PlateNode(plan, plate, index))]),
            ["trees"] = new JsonArray([.. plan.Trees.Select(tree => TreeSketch.Of(plan, tree))]),
            ["patterns"] = new JsonArray(
            [
                .. plan.Parts.Select((part, index) => new JsonObject
                {
                    ["part"] = part.Part.Name,
                    ["height_mm"] = Short(part.UprightBox.Size.Z),
                    ["lines"] = lines[index],
                }),
            ]),
        };
    }

    private static JsonObject PlateNode(CastingPlan plan, PrintPlate plate, int index) => new()
    {
        ["file"] = CastingPlans.FileOf(index),
        ["places"] = new JsonArray(
        [
            .. plate.Places.Select(place =>
            {
                var stood = plan.Parts[place.Part].Upright.Inverse().Then(place.Pose);
                return new JsonObject
                {
                    ["part"] = plan.Parts[place.Part].Part.Name,
                    ["x_mm"] = Short(stood.Origin.X),
                    ["y_mm"] = Short(stood.Origin.Y),
                    ["turn_deg"] = Short(Math.Atan2(stood.AxisX.Y, stood.AxisX.X) * 180 / Math.PI),
                };
            }),
        ]),
    };

    // As a draughtsman looks down on it: what is hidden is left out.
    private static JsonArray LinesOf(SpruedPart part, Mesh mesh, double deviationMm)
    {
        var surface = CreasedNormals.Smooth(mesh.Moved(part.Upright));
        var body = OutlineBody.Of(surface.Positions, surface.Normals, surface.Triangles);
        var view = OutlineDrawer.Draw([new PlacedBody(body, Pose.Identity, 0)], ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), OutlineSettings.For(deviationMm));
        return [.. view.Lines.Select(line => new JsonArray([.. line.Points.SelectMany(point => (JsonNode[])[Short(point.X), Short(point.Y)])]))];
    }

    private static double Short(double mm) => Math.Round(mm, Decimals, MidpointRounding.ToEven);
}
