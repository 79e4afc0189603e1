using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Studio.Pieces;

/// <summary>Where on the parts a finding lies, so that the view can fly there and mark it.</summary>
/// <remarks>A check that measured a point says so itself; for the others the feature that the rule is about is found on the mesh.</remarks>
public static class FindingPlaces
{
    // Rules about a feature of a part. A rule that is not here and brings no point is about the whole piece.
    private static readonly (string Rule, PartRole Role, string[] Features)[] About =
    [
        ("claw", PartRole.Link, ["claw tip", "claw"]),
        ("seat-depth", PartRole.Link, ["claw heel", "bearing"]),
        ("bearing-contact", PartRole.Link, ["bearing", "claw heel"]),
        ("stone-entry", PartRole.Link, ["claw tip", "claw"]),
        ("opening", PartRole.Link, ["base rail"]),
        ("culet-clearance", PartRole.Link, ["base rail"]),
        ("bar-strength", PartRole.Link, ["bar"]),
        ("eye", PartRole.Link, ["eye"]),
        ("cheek-strength", PartRole.Link, ["cheek"]),
        ("hinge", PartRole.Link, ["eye"]),
        ("gap-in-hinge", PartRole.Link, ["cheek"]),
        ("stone-gap", PartRole.Link, ["upper rail"]),
        ("joints-run-free", PartRole.Link, ["bar"]),
        ("play-shortens", PartRole.Link, ["bar"]),
        ("catch", PartRole.Box, ["lip"]),
        ("tongue", PartRole.Tongue, ["tongue strip"]),
        ("push", PartRole.Tongue, ["tongue strip"]),
        ("safety", PartRole.Safety, ["safety wire"]),
        ("clasp-hinge", PartRole.Box, ["cheek"]),
        ("clasp", PartRole.Box, ["box wall"]),
    ];

    /// <summary>The places of a finding; none where it is about the whole piece.</summary>
    public static ImmutableArray<Spot> Of(PieceModel model, Finding finding)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(finding);
        if (!finding.Spots.IsEmpty)
        {
            return finding.Spots;
        }

        // "link: stop, nowhere thinner than 1.13" names part and feature.
        if (finding.Rule == "smallest-wall" && finding.Where.Split(": ") is [var name, var rest] && model.Piece.Parts.FirstOrDefault(known => known.Name == name) is { } thick)
        {
            return OnFeature(model, thick, [rest.Split(',')[0]]) is { } on ? [new Spot(thick.Role, on)] : [];
        }

        foreach (var (rule, role, features) in About)
        {
            if (finding.Rule.StartsWith(rule, StringComparison.Ordinal) && model.Piece.Find(role) is { } part)
            {
                return OnFeature(model, part, features) is { } at ? [new Spot(role, at)] : [];
            }
        }

        return finding.Rule == "castable" && model.Piece.Parts.FirstOrDefault(part => finding.Where.StartsWith(part.Name, StringComparison.Ordinal)) is { } whole
            ? [new Spot(whole.Role, model.MeshOf(whole.Role).WorstAt)]
            : [];
    }

    // The surface point nearest to the feature and furthest out to the side and up, where somebody looking down sees it.
    private static Vec3? OnFeature(PieceModel model, Part part, string[] names)
    {
        var feature = names.Select(name => part.Features.FirstOrDefault(known => known.Name == name)).FirstOrDefault(known => known is not null);
        if (feature is null)
        {
            return null;
        }

        var mesh = model.MeshOf(part.Role).Mesh;
        const double onIt = 0.02;
        var (best, bestAt) = (double.NegativeInfinity, (Vec3?)null);
        for (var i = 0; i < mesh.VertexCount; i++)
        {
            var p = mesh.Vertex(i);
            var height = p.Z - 0.4 * p.Y;
            if (height > best && feature.Solid.Distance(p) < onIt)
            {
                (best, bestAt) = (height, p);
            }
        }

        return bestAt;
    }
}
