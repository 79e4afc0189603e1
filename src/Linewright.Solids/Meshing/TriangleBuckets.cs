using System.Runtime.CompilerServices;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>The triangles of a mesh sorted into cubes by their centroid, so that neighbours are worked on together.</summary>
internal sealed class TriangleBuckets
{
    // Enough triangles a cube to fill batches, few enough that the solid near it stays small.
    private const double EdgesAlongCube = 8;
    private const double MostCubes = 1 << 18;
    private readonly int[] first;
    private readonly int[] order;

    /// <param name="mesh">The mesh.</param>
    /// <param name="side">Edge of a cube, mm; made longer where there would be too many, infinite for a single one.</param>
    /// <param name="shift">How far before the mesh's low corner the first cube starts, mm.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public TriangleBuckets(Mesh mesh, double side, double shift)
    {
        var triangles = mesh.Triangles;
        var box = mesh.Bounds;
        box = box with { Low = box.Low - new Vec3(shift, shift, shift) };
        while (Along(box.Size.X) * Along(box.Size.Y) * Along(box.Size.Z) > MostCubes)
        {
            side *= 1.5;
        }

        int countX = (int)Along(box.Size.X), countY = (int)Along(box.Size.Y), countZ = (int)Along(box.Size.Z);
        float lowX = (float)box.Low.X, lowY = (float)box.Low.Y, lowZ = (float)box.Low.Z, scale = (float)(1 / side);
        var cube = new int[mesh.TriangleCount];
        first = new int[countX * countY * countZ + 1];
        var p = mesh.Positions;
        for (var t = 0; t < cube.Length; t++)
        {
            int a = triangles[t * 3] * 3, b = triangles[t * 3 + 1] * 3, c = triangles[t * 3 + 2] * 3;
            var x = Math.Clamp((int)(((p[a] + p[b] + p[c]) / 3 - lowX) * scale), 0, countX - 1);
            var y = Math.Clamp((int)(((p[a + 1] + p[b + 1] + p[c + 1]) / 3 - lowY) * scale), 0, countY - 1);
            var z = Math.Clamp((int)(((p[a + 2] + p[b + 2] + p[c + 2]) / 3 - lowZ) * scale), 0, countZ - 1);
            cube[t] = (z * countY + y) * countX + x;
            first[cube[t] + 1]++;
        }

        for (var i = 1; i < first.Length; i++)
        {
            first[i] += first[i - 1];
        }

        order = new int[cube.Length];
        var next = first.AsSpan(0, first.Length - 1).ToArray();
        for (var t = 0; t < cube.Length; t++)
        {
            order[next[cube[t]]++] = t;
        }

        double Along(double length) => Math.Floor(length / side) + 1;
    }

    /// <summary>Cubes that suit batches of points on the triangles.</summary>
    public static TriangleBuckets ForBatches(Mesh mesh) => new(mesh, Math.Max(EdgesAlongCube * MeanEdge(mesh), 1e-6), 0);

    /// <summary>Number of cubes, empty ones too.</summary>
    public int Count => first.Length - 1;

    /// <summary>The triangles of one cube, ascending.</summary>
    public ReadOnlySpan<int> this[int cube] => order.AsSpan(first[cube], first[cube + 1] - first[cube]);

    /// <summary>The usual length of an edge, mm, from a few hundred of them.</summary>
    public static double MeanEdge(Mesh mesh)
    {
        var step = Math.Max(1, mesh.TriangleCount / 500);
        double sum = 0;
        var count = 0;
        for (var t = 0; t < mesh.TriangleCount; t += step, count++)
        {
            sum += (mesh.Vertex(mesh.Triangles[t * 3]) - mesh.Vertex(mesh.Triangles[t * 3 + 1])).Length;
        }

        return sum / Math.Max(1, count);
    }
}
