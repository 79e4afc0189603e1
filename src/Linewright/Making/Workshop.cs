using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Casting;
using Linewright.Parts;
using Linewright.Solids.Shapes;

namespace Linewright.Making;

/// <summary>Front door of the room: meshes a piece in both states, compensates what is cast, and weighs it.</summary>
public static class Workshop
{
    /// <summary>Makes the model as worn and the patterns, side by side on all processors.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="plan">How it is cast, where that was planned already; null plans it here.</param>
    /// <param name="done">Told how many of the meshes are done, two a part.</param>
    /// <param name="stop">Asks to stop.</param>
    public static MadePiece Make(Piece piece, CastingPlan? plan = null, IProgress<int>? done = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var brief = piece.Design.Brief;
        var chain = brief.Chain;
        var parts = piece.Parts;
        ImmutableArray<Solid> solids = [.. parts.Select(part => part.AsSet), .. parts.Select(part => part.AsCast)];
        var meshes = PartMeshes.Run(solids, brief.Process.MeshDeviationUm / 1000, done, stop);
        var model = PieceModel.Of(piece, meshes[..parts.Length]);
        return new MadePiece(
            model,
            [.. parts.Select((part, index) => Pattern.Of(part, meshes[parts.Length + index], chain))],
            plan ?? CastingPlans.Of(piece, stop: stop));
    }
}
