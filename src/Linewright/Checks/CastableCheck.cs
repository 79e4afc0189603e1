using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Solids.Meshing;

namespace Linewright.Checks;

/// <summary>Each part's surface: closed, one piece, and as near to the true solid as was asked.</summary>
internal sealed class CastableCheck : ICheck
{
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var limit = model.Piece.Design.Brief.Process.MeshDeviationUm;
        for (var i = 0; i < model.AsSet.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            var (part, outcome) = (model.Piece.Parts[i], model.AsSet[i]);
            var surface = Topology.Inspect(outcome.Mesh);
            var isSound = outcome.Status == MeshStatus.Meshed && surface is { IsClosed: true, IsManifold: true, IsOriented: true, Components: 1 };
            yield return new Finding(
                "castable",
                isSound ? Verdict.Pass : Verdict.Fail,
                isSound ? part.Name : FormattableString.Invariant($"{part.Name}: {outcome.Status}, {surface.Components} pieces"),
                outcome.CertifiedDeviationMm * 1000,
                limit,
                "um",
                "a file for casting is one closed surface, as near to the solid as asked",
                Marks.Asked,
                isSound ? "" : "ask for a smaller process.mesh_deviation_um, or for more metal where the surface breaks up");
        }
    }
}
