using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>How far a mesh lies from its solid: the largest |distance| at vertices, edge midpoints and centroids.</summary>
/// <remarks>
/// It says how far the mesh strays from the surface, in both directions. It does not say that every feature of the
/// solid has a triangle: a wall thinner than a cell may be missing altogether. Single precision, about 1e-6 mm.
/// </remarks>
/// <param name="DeviationMm">The largest |distance|.</param>
/// <param name="WorstAt">Where it was found.</param>
public readonly record struct Certificate(double DeviationMm, Vec3 WorstAt)
{
    // A centroid, three midpoints and three vertices a triangle.
    private const int MostPoints = 7;
    private const int TrianglesAtOnce = 256;

    /// <summary>Measures a closed mesh.</summary>
    /// <param name="solid">The solid that the mesh stands for.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="threads">Threads to use; 0 for as many as there are processors.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The measuring was asked to stop.</exception>
    public static Certificate Measure(Solid solid, Mesh mesh, int threads = 0, CancellationToken stop = default)
        => Measure(solid, mesh, new Crew(threads, stop));

    internal static Certificate Measure(Solid solid, Mesh mesh, Crew crew)
    {
        if (mesh.TriangleCount == 0)
        {
            return default;
        }

        // The first triangle at a vertex measures it.
        var isFirst = new byte[mesh.TriangleCount];
        var seen = new bool[mesh.VertexCount];
        var triangles = mesh.Triangles;
        for (var i = 0; i < triangles.Length; i++)
        {
            ref var mark = ref seen[triangles[i]];
            isFirst[i / 3] |= mark ? (byte)0 : (byte)(1 << (i % 3));
            mark = true;
        }

        var buckets = TriangleBuckets.ForBatches(mesh);
        var worst = new (float Distance, Vec3 At)[buckets.Count];
        crew.Run(buckets.Count, (i, arena) =>
        {
            if (buckets[i].Length > 0)
            {
                worst[i] = Worst(solid, mesh, buckets[i], isFirst, arena);
            }
        });

        var result = worst[0];
        foreach (var found in worst)
        {
            result = found.Distance > result.Distance ? found : result;
        }

        return new Certificate(result.Distance, result.At);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (float Distance, Vec3 At) Worst(Solid solid, Mesh mesh, ReadOnlySpan<int> bucket, byte[] isFirst, Arena arena)
    {
        var local = Near(solid, mesh, bucket);
        var mark = arena.Mark;
        const int most = (TrianglesAtOnce * MostPoints + Solid.BatchStep - 1) / Solid.BatchStep * Solid.BatchStep;
        Span<float> x = arena.Take(most), y = arena.Take(most), z = arena.Take(most), distance = arena.Take(most);
        (float Distance, Vec3 At) worst = default;
        var p = mesh.Positions;
        var triangles = mesh.Triangles;
        for (var start = 0; start < bucket.Length; start += TrianglesAtOnce)
        {
            var n = 0;
            foreach (var t in bucket[start..Math.Min(start + TrianglesAtOnce, bucket.Length)])
            {
                int a = triangles[t * 3] * 3, b = triangles[t * 3 + 1] * 3, c = triangles[t * 3 + 2] * 3;
                Put((p[a] + p[b] + p[c]) / 3, (p[a + 1] + p[b + 1] + p[c + 1]) / 3, (p[a + 2] + p[b + 2] + p[c + 2]) / 3, x, y, z);
                for (var k = 0; k < 3; k++)
                {
                    if (((isFirst[t] >> k) & 1) != 0)
                    {
                        Put(p[a], p[a + 1], p[a + 2], x, y, z);
                    }

                    // The edge's other triangle runs it the other way.
                    if (a < b)
                    {
                        Put((p[a] + p[b]) / 2, (p[a + 1] + p[b + 1]) / 2, (p[a + 2] + p[b + 2]) / 2, x, y, z);
                    }

                    (a, b, c) = (b, c, a);
                }
            }

            var padded = EdgeCrossings.Pad(n);
            x[n..padded].Fill(x[0]);
            y[n..padded].Fill(y[0]);
            z[n..padded].Fill(z[0]);
            local.Distances(x[..padded], y[..padded], z[..padded], distance[..padded], arena);
            for (var i = 0; i < n; i++)
            {
                if (MathF.Abs(distance[i]) > worst.Distance)
                {
                    worst = (MathF.Abs(distance[i]), new Vec3(x[i], y[i], z[i]));
                }
            }

            void Put(float px, float py, float pz, Span<float> x, Span<float> y, Span<float> z)
            {
                (x[n], y[n], z[n]) = (px, py, pz);
                n++;
            }
        }

        arena.Release(mark);
        return worst;
    }

    /// <summary>The solid near the triangles of a bucket.</summary>
    private static Solid Near(Solid solid, Mesh mesh, ReadOnlySpan<int> bucket)
    {
        var p = mesh.Positions;
        var triangles = mesh.Triangles;
        Span<float> low = [float.MaxValue, float.MaxValue, float.MaxValue], high = [float.MinValue, float.MinValue, float.MinValue];
        foreach (var t in bucket)
        {
            for (var k = 0; k < 3; k++)
            {
                var v = triangles[t * 3 + k] * 3;
                for (var axis = 0; axis < 3; axis++)
                {
                    low[axis] = MathF.Min(low[axis], p[v + axis]);
                    high[axis] = MathF.Max(high[axis], p[v + axis]);
                }
            }
        }

        float dx = high[0] - low[0], dy = high[1] - low[1], dz = high[2] - low[2];
        var radius = 0.5f * MathF.Sqrt(dx * dx + dy * dy + dz * dz) + 1e-4f;
        return solid.Near(0.5f * (low[0] + high[0]), 0.5f * (low[1] + high[1]), 0.5f * (low[2] + high[2]), radius, out _);
    }
}
