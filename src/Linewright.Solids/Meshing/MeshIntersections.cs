using System.Collections.Concurrent;

namespace Linewright.Solids.Meshing;

/// <summary>Finds triangles of a mesh that meet where they should not.</summary>
/// <remarks>Exact for the coordinates as they are; touching counts. A triangle without area is reported with itself.</remarks>
public static class MeshIntersections
{
    private const int TrianglesAtOnce = 512;

    /// <summary>Pairs of triangles that meet, ascending; as many as the limit allows, in an order that does not depend on threads.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="limit">Most pairs to return.</param>
    /// <param name="threads">Threads to use; 0 for as many as there are processors.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The search was asked to stop.</exception>
    public static IReadOnlyList<(int First, int Second)> Find(
        Mesh mesh, int limit = int.MaxValue, int threads = 0, CancellationToken stop = default)
        => Find(mesh, limit, new Crew(threads, stop));

    internal static IReadOnlyList<(int First, int Second)> Find(Mesh mesh, int limit, Crew crew)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentOutOfRangeException.ThrowIfNegative(limit);
        var tree = new TriangleTree(mesh);
        var found = new ConcurrentBag<(int First, int Second)>();
        var parts = (mesh.TriangleCount + TrianglesAtOnce - 1) / TrianglesAtOnce;
        crew.Run(parts, (part, _) =>
        {
            var near = new List<int>();
            for (var i = part * TrianglesAtOnce; i < Math.Min((part + 1) * TrianglesAtOnce, mesh.TriangleCount); i++)
            {
                Look(mesh, tree, tree.Order[i], near, found);
            }
        });
        var pairs = found.ToArray();
        Array.Sort(pairs);
        return pairs.Length > limit ? pairs[..limit] : pairs;
    }

    private static void Look(Mesh mesh, TriangleTree tree, int triangle, List<int> near, ConcurrentBag<(int First, int Second)> found)
    {
        var positions = mesh.Positions;
        var triangles = mesh.Triangles;
        var corners = triangles.Slice(triangle * 3, 3);
        if (TrianglePair.IsFlat(positions, corners))
        {
            found.Add((triangle, triangle));
        }

        near.Clear();
        tree.ListNear(triangle, near);
        foreach (var other in near)
        {
            if (TrianglePair.Meet(positions, corners, triangles.Slice(other * 3, 3)))
            {
                found.Add((triangle, other));
            }
        }
    }
}
