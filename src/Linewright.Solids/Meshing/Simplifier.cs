using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>Makes fewer triangles of a fine mesh without leaving its solid's surface by more than a deviation.</summary>
/// <remarks>
/// Two rounds work on cubes side by side, the second on cubes set off by half, a third goes over the whole. Edges may
/// then have been pulled through thin places: triangles that meet are found exactly, the vertices of the fine mesh
/// round them are held fast, and the work is done again. Each repeat holds a wider region; in the end nothing
/// moves, and the fine mesh has no such triangles. The result does not depend on the threads.
/// </remarks>
public static class Simplifier
{
    private const double CubeEdges = 40; // mean edges along a cube
    private const int LastRounds = 6;
    private const int MostRepeats = 10;
    private const int MostPairs = 2000;

    // The first region reaches half an edge beyond the place where triangles meet; each repeat doubles it.
    private const double FirstReachEdges = 0.5;

    /// <summary>Simplifies a closed mesh.</summary>
    /// <param name="solid">The solid that the mesh stands for.</param>
    /// <param name="mesh">A closed, oriented manifold mesh, fine enough for the solid's features.</param>
    /// <param name="deviationMm">Largest |distance| allowed at vertices, edge midpoints and centroids, where something changes.</param>
    /// <param name="threads">Threads to use; 0 for as many as there are processors.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is not above 0.</exception>
    /// <exception cref="OperationCanceledException">The run was asked to stop.</exception>
    public static SimplifyOutcome Run(Solid solid, Mesh mesh, double deviationMm, int threads = 0, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(solid);
        ArgumentNullException.ThrowIfNull(mesh);
        return Run(solid, mesh, Guard.Positive(deviationMm), new Crew(threads, stop));
    }

    internal static SimplifyOutcome Run(Solid solid, Mesh mesh, double deviation, Crew crew)
    {
        var isHeld = new bool[mesh.VertexCount];
        var flat = FlatFaces.Find(mesh, EdgeCollapser.FlatLimit(deviation));
        var edge = TriangleBuckets.MeanEdge(mesh);
        var reach = FirstReachEdges * edge;
        for (var repeat = 0; repeat <= MostRepeats; repeat++, reach *= 2)
        {
            var work = Passes(solid, mesh, isHeld, flat, deviation, edge, crew);
            var result = work.ToMesh();
            var pairs = MeshIntersections.Find(result, MostPairs, crew);
            if (pairs.Count == 0)
            {
                return new SimplifyOutcome(repeat > 0 ? Mend(solid, work, flat, deviation, edge, crew) : result, true, repeat);
            }

            Hold(mesh, result, pairs, reach, isHeld);
        }

        return new SimplifyOutcome(mesh, MeshIntersections.Find(mesh, 1, crew).Count == 0, MostRepeats);
    }

    private static HeldMesh Passes(Solid solid, Mesh mesh, bool[] isHeld, FlatFaces flat, double deviation, double edge, Crew crew)
    {
        var side = CubeEdges * edge;
        var work = new HeldMesh(mesh.Positions.ToArray(), mesh.Triangles.ToArray(), isHeld, flat.FaceOf);
        ReadOnlySpan<(double Side, double Shift, int Rounds)> cuts = [(side, 0, 1), (side, side / 2, 1), (double.PositiveInfinity, 0, LastRounds)];
        foreach (var (cubeSide, shift, rounds) in cuts)
        {
            var cubes = new TriangleBuckets(work.ToMesh(), cubeSide, shift);
            work = new SimplifyPass(solid, deviation, edge, work, flat.Planes, cubes, rounds).Run(crew);
        }

        return work;
    }

    /// <summary>Lets go of what was held and tries once more: with all else in place the triangles often no longer meet.</summary>
    private static Mesh Mend(Solid solid, HeldMesh work, FlatFaces flat, double deviation, double edge, Crew crew)
    {
        var free = work with { IsHeld = new bool[work.IsHeld.Length] };
        var whole = new TriangleBuckets(free.ToMesh(), double.PositiveInfinity, 0);
        var mended = new SimplifyPass(solid, deviation, edge, free, flat.Planes, whole, LastRounds).Run(crew).ToMesh();
        return MeshIntersections.Find(mended, 1, crew).Count == 0 ? mended : work.ToMesh();
    }

    /// <summary>Holds the fine vertices near the places where triangles meet.</summary>
    private static void Hold(Mesh fine, Mesh result, IReadOnlyList<(int First, int Second)> pairs, double reach, bool[] isHeld)
    {
        var boxes = new List<Bounds>();
        foreach (var (first, second) in pairs)
        {
            // The two meet where their boxes overlap; the triangles themselves may be as large as a face.
            boxes.Add(BoxOf(result, first).Meet(BoxOf(result, second)).Grown(reach));
        }

        for (var v = 0; v < fine.VertexCount; v++)
        {
            var p = fine.Vertex(v);
            isHeld[v] |= boxes.Exists(box => box.Contains(p));
        }
    }

    private static Bounds BoxOf(Mesh mesh, int triangle)
    {
        var box = Bounds.Empty;
        for (var k = 0; k < 3; k++)
        {
            var p = mesh.Vertex(mesh.Triangles[triangle * 3 + k]);
            box = new Bounds(box.Low.Min(p), box.High.Max(p));
        }

        return box;
    }
}
