using System.Collections.Immutable;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;

namespace Linewright.Making;

/// <summary>Measures how much metal a piece holds: the one way in which every report, quote and grid weighs.</summary>
/// <remarks>
/// The solids are meshed just finely enough and what lies between mesh and surface is added. Against meshes of 30 um the
/// volume of a link is right within 3 parts in 10,000, that of a clasp within 3 in 100,000: docs/notes/quote.md. It takes a
/// tenth of the time of a casting file. The same solid gives the same volume, whatever is measured beside it.
/// </remarks>
public static class Weighing
{
    // Measured from 30 to 120 um: volumes of links scatter by 3 in 10,000 whatever the cell, those of clasps settle at 120 um.
    private const double FineCellMm = 0.08, CoarseCellMm = 0.12, LargeMm = 8;

    // Only the volume is asked for, which the sliver corrects: any deviation will do. Assumed.
    private const double DeviationMm = 1;

    /// <summary>Weighs every part, side by side on all processors.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="book">Solids measured before, which are looked up and not measured again; null where there are none.</param>
    /// <param name="threads">Solids to measure at a time; 0 for as many as there are processors.</param>
    /// <param name="stop">Asks to stop.</param>
    public static ImmutableArray<WeighedPart> Of(Piece piece, VolumeBook? book = null, int threads = 0, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        var parts = piece.Parts;
        var volumes = new double[2 * parts.Length];
        var way = new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = threads == 0 ? -1 : threads };
        Parallel.For(0, volumes.Length, way, work =>
        {
            var part = parts[work / 2];
            var state = work % 2 == 0 ? PartState.AsSet : PartState.AsCast;
            if (state == PartState.AsSet || part.IsCast)
            {
                volumes[work] = book is null ? Measure(part, state, stop) : book.Find(piece, part, state, () => Measure(part, state, stop));
            }
        });
        return [.. parts.Select((part, index) => new WeighedPart(part, volumes[2 * index], volumes[2 * index + 1]))];
    }

    /// <summary>A part as set, meshed as coarsely as it is weighed: good for a first round of checks, not for the caster.</summary>
    public static MeshOutcome CoarseMesh(Part part, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Mesh(part.AsSet, stop);
    }

    private static double Measure(Part part, PartState state, CancellationToken stop)
    {
        var solid = state == PartState.AsSet ? part.AsSet : part.AsCast;
        return MassProperties.Of(Mesh(solid, stop).Mesh, solid).Volume;
    }

    private static MeshOutcome Mesh(Solid solid, CancellationToken stop)
    {
        var size = solid.Bounds.Size;
        var isLarge = Math.Max(size.X, Math.Max(size.Y, size.Z)) > LargeMm;
        return Mesher.Run(solid, new MeshSettings(isLarge ? CoarseCellMm : FineCellMm, DeviationMm, false), threads: 1, stop: stop);
    }
}
