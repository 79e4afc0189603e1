using System.Collections.Immutable;
using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;

namespace Linewright.Studio.Pieces;

/// <summary>The surfaces of a piece for the view, in either state, at either tolerance.</summary>
public static class PieceView
{
    // While a control moves: round to the eye at arm's length. The clasp is large and flat, so its cells may be larger.
    private const double MovingCellMm = 0.12, MovingClaspCellMm = 0.2;

    // For a close look: small triangles on every curve, so that what polished metal mirrors does not show them.
    private const double CloseCellMm = 0.06, CloseClaspCellMm = 0.09;

    // No limit on the deviation, for none is promised in a view.
    private const double Unlimited = 10;

    /// <summary>As fast as it goes; for a control that is being moved.</summary>
    public static ImmutableArray<ShadedMesh> Moving(SolvedPiece solved, PartState state, IReadOnlySet<PartRole>? roles, CancellationToken stop)
        => OnCells(solved, state, roles, MovingCellMm, MovingClaspCellMm, ShadedMesh.Quick, stop);

    /// <summary>For a close look: all triangles kept.</summary>
    public static ImmutableArray<ShadedMesh> Close(SolvedPiece solved, PartState state, IReadOnlySet<PartRole>? roles, CancellationToken stop)
        => OnCells(solved, state, roles, CloseCellMm, CloseClaspCellMm, ShadedMesh.Keen, stop);

    /// <summary>As the files have it.</summary>
    public static async Task<ImmutableArray<ShadedMesh>> StillAsync(SolvedPiece solved, PartState state, IReadOnlySet<PartRole>? roles, IProgress<string> stage, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(solved);
        var meshes = state == PartState.AsCast
            ? await solved.CastAsync(stage, stop).ConfigureAwait(false)
            : (await solved.ModelAsync(stage, stop).ConfigureAwait(false)).AsSet;
        return
        [
            .. solved.Piece.Parts.Select((part, index) => (part, index)).Where(pair => roles?.Contains(pair.part.Role) != false)
                .Select(pair => ShadedMesh.Keen(pair.part, state == PartState.AsCast ? pair.part.AsCast : pair.part.AsSet, meshes[pair.index])),
        ];
    }

    private static ImmutableArray<ShadedMesh> OnCells(
        SolvedPiece solved, PartState state, IReadOnlySet<PartRole>? roles, double linkCellMm, double claspCellMm,
        Func<Part, Solid, MeshOutcome, ShadedMesh> shade, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(solved);
        return
        [
            .. solved.Piece.Parts.Where(part => roles?.Contains(part.Role) != false).Select(part =>
            {
                var solid = state == PartState.AsCast ? part.AsCast : part.AsSet;
                var cell = part.Role is PartRole.Link or PartRole.Pin ? linkCellMm : claspCellMm;
                return shade(part, solid, Mesher.Run(solid, new MeshSettings(cell, Unlimited, false) { MostHalvings = 0 }, stop: stop));
            }),
        ];
    }
}
