using Linewright.Files;
using Linewright.Parts;
using Linewright.Solids.Lanes;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Studio.Pieces;

/// <summary>A part's surface as the view draws it: positions in mm, unit normals, three indices a triangle.</summary>
/// <param name="Part">The part.</param>
/// <param name="Positions">x, y, z of each vertex.</param>
/// <param name="Normals">x, y, z of each normal, pointing out.</param>
/// <param name="Triangles">Vertex indices.</param>
/// <param name="DeviationMm">Largest distance found between the mesh and the true surface.</param>
/// <param name="VolumeMm3">Volume of the mesh.</param>
public sealed record ShadedMesh(Part Part, float[] Positions, float[] Normals, int[] Triangles, double DeviationMm, double VolumeMm3)
{
    // A vertex beside an edge takes the true normal of its own side only where that is the side its triangles face.
    private const double SameSide = 0.85;

    /// <summary>With the true surface's normals, all edges taken for round: quick, for a mesh that lives a tenth of a second.</summary>
    public static ShadedMesh Quick(Part part, Solid solid, MeshOutcome outcome)
    {
        var positions = outcome.Mesh.Positions.ToArray();
        return new ShadedMesh(part, positions, Gradients(solid, positions), outcome.Mesh.Triangles.ToArray(), outcome.CertifiedDeviationMm, VolumeOf(outcome.Mesh));
    }

    /// <summary>With edges where the surface has them, and the true surface's normals elsewhere.</summary>
    public static ShadedMesh Keen(Part part, Solid solid, MeshOutcome outcome)
    {
        var creased = CreasedNormals.Smooth(outcome.Mesh);
        float[] positions = [.. creased.Positions], normals = [.. creased.Normals];
        var exact = Gradients(solid, positions);
        for (var i = 0; i < normals.Length; i += 3)
        {
            if (normals[i] * exact[i] + normals[i + 1] * exact[i + 1] + normals[i + 2] * exact[i + 2] > SameSide)
            {
                exact.AsSpan(i, 3).CopyTo(normals.AsSpan(i));
            }
        }

        return new ShadedMesh(part, positions, normals, [.. creased.Triangles], outcome.CertifiedDeviationMm, VolumeOf(outcome.Mesh));
    }

    private static float[] Gradients(Solid solid, float[] positions)
    {
        var count = positions.Length / 3;
        var padded = (count + Solid.BatchStep - 1) / Solid.BatchStep * Solid.BatchStep;
        float[] x = new float[padded], y = new float[padded], z = new float[padded];
        for (var i = 0; i < count; i++)
        {
            (x[i], y[i], z[i]) = (positions[i * 3], positions[i * 3 + 1], positions[i * 3 + 2]);
        }

        float[] d = new float[padded], gx = new float[padded], gy = new float[padded], gz = new float[padded];
        const int chunk = 64 * Solid.BatchStep;
        Parallel.For(0, (padded + chunk - 1) / chunk, () => new Arena(), (block, _, arena) =>
        {
            var range = (block * chunk)..Math.Min(padded, (block + 1) * chunk);
            solid.Gradients(x.AsSpan(range), y.AsSpan(range), z.AsSpan(range), d.AsSpan(range), gx.AsSpan(range), gy.AsSpan(range), gz.AsSpan(range), arena);
            return arena;
        }, _ => { });
        var normals = new float[count * 3];
        for (var i = 0; i < count; i++)
        {
            var length = MathF.Max(1e-6f, MathF.Sqrt(gx[i] * gx[i] + gy[i] * gy[i] + gz[i] * gz[i]));
            (normals[i * 3], normals[i * 3 + 1], normals[i * 3 + 2]) = (gx[i] / length, gy[i] / length, gz[i] / length);
        }

        return normals;
    }

    // Source: Gauss's divergence theorem, a signed tetrahedron a triangle.
    private static double VolumeOf(Mesh mesh)
    {
        var sum = 0.0;
        for (var t = 0; t < mesh.TriangleCount; t++)
        {
            Vec3 a = mesh.Vertex(mesh.Triangles[t * 3]), b = mesh.Vertex(mesh.Triangles[t * 3 + 1]), c = mesh.Vertex(mesh.Triangles[t * 3 + 2]);
            sum += a.Dot(b.Cross(c));
        }

        return sum / 6;
    }
}
