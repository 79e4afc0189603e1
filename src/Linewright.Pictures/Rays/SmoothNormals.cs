using Linewright.Solids.Meshing;

namespace Linewright.Pictures.Rays;

/// <summary>Normals of a mesh's corners: smooth over rounded faces, broken at edges.</summary>
/// <remarks>
/// A corner's normal is the mean, weighted by the angle at that corner, of the neighbours round it that turn less than
/// the crease away. Source: Thürmer and Wüthrich (1998), Computing vertex normals from polygonal facets.
/// </remarks>
internal static class SmoothNormals
{
    /// <summary>Cosine of the crease, 30 degrees. Assumed: rounded edges of a casting are meshed finer than that, chamfers are steeper.</summary>
    private const float Crease = 0.866f;

    /// <summary>Four normals a triangle.</summary>
    public static TriangleNormals[] Of(Mesh mesh)
    {
        var count = mesh.TriangleCount;
        var result = new TriangleNormals[count];
        var weights = new Float3[count];
        var triangles = mesh.Triangles;
        for (var i = 0; i < count; i++)
        {
            Float3 a = At(mesh, triangles[3 * i]), b = At(mesh, triangles[3 * i + 1]), c = At(mesh, triangles[3 * i + 2]);
            var normal = Float3.Cross(b - a, c - a);
            var length = MathF.Sqrt(Float3.Dot(normal, normal));
            result[i].Flat = length > 0 ? normal * (1 / length) : new Float3(0, 0, 1);
            weights[i] = length > 0 ? new Float3(Angle(b - a, c - a), Angle(c - b, a - b), Angle(a - c, b - c)) : default;
        }

        // Which triangles meet at each vertex.
        var starts = new int[mesh.VertexCount + 1];
        foreach (var vertex in triangles)
        {
            starts[vertex + 1]++;
        }

        for (var i = 0; i < mesh.VertexCount; i++)
        {
            starts[i + 1] += starts[i];
        }

        var next = starts.AsSpan().ToArray();
        var uses = new int[triangles.Length];
        for (var i = 0; i < triangles.Length; i++)
        {
            uses[next[triangles[i]]++] = i;
        }

        for (var i = 0; i < count; i++)
        {
            Float3 Corner(int corner) => Mean(mesh.Triangles[3 * i + corner], result[i].Flat);
            result[i].A = Corner(0);
            result[i].B = Corner(1);
            result[i].C = Corner(2);
        }

        return result;

        Float3 Mean(int vertex, Float3 flat)
        {
            var sum = default(Float3);
            for (var k = starts[vertex]; k < starts[vertex + 1]; k++)
            {
                var (triangle, corner) = (uses[k] / 3, uses[k] % 3);
                var normal = result[triangle].Flat;
                if (Float3.Dot(normal, flat) > Crease)
                {
                    var w = weights[triangle];
                    sum += normal * (corner == 0 ? w.X : corner == 1 ? w.Y : w.Z);
                }
            }

            return Float3.Dot(sum, sum) > 1e-12f ? Float3.Normalise(sum) : flat;
        }
    }

    private static Float3 At(Mesh mesh, int index)
        => new(mesh.Positions[3 * index], mesh.Positions[3 * index + 1], mesh.Positions[3 * index + 2]);

    private static float Angle(Float3 a, Float3 b)
        => MathF.Acos(Math.Clamp(Float3.Dot(a, b) / MathF.Sqrt(Math.Max(Float3.Dot(a, a) * Float3.Dot(b, b), 1e-30f)), -1, 1));
}
