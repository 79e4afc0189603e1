using System.Collections.Immutable;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;

namespace Linewright.Assembly;

/// <summary>The meshes of a piece's parts in one state, each meshed once however often the line has it.</summary>
public static class PartMeshes
{
    // Measured on links for stones of 1.5 to 6.5 mm: at 35 um every one keeps within 5 um at once, with as many triangles
    // and the same volume to a thousandth as at 25 um, for half the time; at 40 um one in twelve has to be meshed again.
    // The clasp is large and flat, its edges are kept at any cell.
    private const double FineCellMm = 0.035, CoarseCellMm = 0.045, LargeMm = 8;

    /// <summary>Meshes solids by part; the order of work does not change the result.</summary>
    /// <param name="solids">The solid of each part, in the order of the parts.</param>
    /// <param name="deviationMm">Largest distance of a mesh from its solid.</param>
    /// <param name="done">Told after each part how many are done.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <param name="sizedLike">The solids whose size decides how finely; those to be meshed where not given. A link with a sprue is fine like a link.</param>
    public static ImmutableArray<MeshOutcome> Run(
        ImmutableArray<Solid> solids, double deviationMm, IProgress<int>? done, CancellationToken stop, ImmutableArray<Solid> sizedLike = default)
    {
        var outcomes = new MeshOutcome[solids.Length];
        var finished = 0;

        // One thread a part: parts side by side wait for each other less, and use the processors better than one part's blocks.
        Parallel.For(0, solids.Length, new ParallelOptions { CancellationToken = stop }, index =>
        {
            outcomes[index] = Mesher.Run(solids[index], Settings((sizedLike.IsDefault ? solids : sizedLike)[index], deviationMm), threads: 1, stop: stop);
            done?.Report(Interlocked.Increment(ref finished));
        });
        return ImmutableArray.Create(outcomes);
    }

    private static MeshSettings Settings(Solid solid, double deviationMm)
    {
        var size = solid.Bounds.Size;
        var isLarge = Math.Max(size.X, Math.Max(size.Y, size.Z)) > LargeMm;
        return new MeshSettings(isLarge ? CoarseCellMm : FineCellMm, deviationMm, true);
    }
}
