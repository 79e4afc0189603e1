using Linewright.Solids.Shapes;

namespace Linewright.Solids.Meshing;

/// <summary>Turns a solid into a closed surface of triangles that keeps its sharp edges.</summary>
/// <remarks>
/// The front door of this room. The mesh is closed, oriented and 2-manifold whatever the solid; it is measured
/// against the distance before it is handed out. The same solid at the same settings gives the same bytes,
/// whatever the number of threads. A solid that cannot be meshed is an outcome with a status, not an exception.
/// </remarks>
public static class Mesher
{
    /// <summary>Meshes a solid.</summary>
    /// <param name="solid">The solid.</param>
    /// <param name="settings">Cell, deviation, and whether to simplify.</param>
    /// <param name="progress">Told the part of the work done, 0 to 1, from any thread.</param>
    /// <param name="threads">Threads to use; 0 for as many as there are processors.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The run was asked to stop.</exception>
    public static MeshOutcome Run(
        Solid solid, MeshSettings settings, IProgress<double>? progress = null, int threads = 0, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(solid);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        if (solid.Bounds.IsEmpty)
        {
            return new MeshOutcome { Status = MeshStatus.Empty, CellMm = settings.CellMm };
        }

        if (!solid.Bounds.IsFinite)
        {
            return new MeshOutcome { Status = MeshStatus.Unbounded, CellMm = settings.CellMm };
        }

        var crew = new Crew(threads, stop);
        var cell = settings.CellMm;
        for (var halving = 0; ; halving++, cell /= 2)
        {
            var outcome = Once(solid, settings, cell, crew);
            var isLast = halving >= settings.MostHalvings;
            if (outcome.Status != MeshStatus.DeviationNotReached || isLast)
            {
                progress?.Report(1);
                return outcome;
            }

            progress?.Report((halving + 1.0) / (settings.MostHalvings + 1));
        }
    }

    private static MeshOutcome Once(Solid solid, MeshSettings settings, double cell, Crew crew)
    {
        var fine = new SurfaceBuilder(solid, cell, settings.MostBlocks, crew).Build();
        if (fine.Status != MeshStatus.Meshed)
        {
            return fine;
        }

        fine = fine with { FineTriangles = fine.Mesh.TriangleCount };
        if (!settings.Simplify)
        {
            return Certified(fine, solid, settings, crew);
        }

        // A fiftieth is kept back for the rounding between the simplifier's tests and the certificate.
        var limit = 0.98 * settings.DeviationMm;
        var simple = Simplifier.Run(solid, fine.Mesh, limit, crew);
        var outcome = fine with { Mesh = simple.Mesh, Repeats = simple.Repeats };
        return simple.IsClean
            ? Certified(outcome, solid, settings, crew)
            : Certified(outcome, solid, settings, crew) with { Status = MeshStatus.SelfIntersecting };
    }

    private static MeshOutcome Certified(MeshOutcome outcome, Solid solid, MeshSettings settings, Crew crew)
    {
        var certificate = Certificate.Measure(solid, outcome.Mesh, crew);
        return outcome with
        {
            CertifiedDeviationMm = certificate.DeviationMm,
            WorstAt = certificate.WorstAt,
            Status = certificate.DeviationMm <= settings.DeviationMm ? outcome.Status : MeshStatus.DeviationNotReached,
        };
    }
}
