using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>Feels a solid's normal at the corners of the triangles that stand for it.</summary>
/// <remarks>
/// A corner itself tells little: it may lie on an edge, or some micrometres down the rounding of a flat face, where the normal
/// has already turned by 18 degrees. So each triangle is felt in its middle and half-way to its corners, and what the
/// normal turns by from there to here is taken once more: exact for flat faces and even bends.
/// </remarks>
internal static class SurfaceNormals
{
    // A normal further than this from its triangle's belongs to another face, across an edge. The cosine of 50 degrees: Assumed.
    private const double LeastAgreement = 0.64;

    // What single precision may round the ball by. mm.
    private const double HairMm = 1e-3;

    // Middle and three half-ways.
    private const int Probes = 4;

    // Sixteen triangles: neighbours mostly, to which little of the solid matters.
    private const int Batch = 4 * Solid.BatchStep;

    /// <summary>The unit normals, three a triangle, in its corners' order.</summary>
    /// <param name="solid">In the mesh's frame.</param>
    /// <param name="triangles">Corners and flat normal of each triangle.</param>
    public static Vec3[] AtCorners(Solid solid, IReadOnlyList<(Vec3 A, Vec3 B, Vec3 C, Vec3 Normal)> triangles)
    {
        var felt = Feel(solid, triangles);
        var normals = new Vec3[triangles.Count * 3];
        for (var face = 0; face < triangles.Count; face++)
        {
            var own = triangles[face].Normal;
            var middle = felt[face * Probes];
            for (var corner = 0; corner < 3; corner++)
            {
                var turned = (2 * felt[face * Probes + 1 + corner] - middle).Normalised();
                normals[face * 3 + corner] = middle.Dot(own) > LeastAgreement && turned.Dot(own) > LeastAgreement ? turned : own;
            }
        }

        return normals;
    }

    private static Vec3[] Feel(Solid solid, IReadOnlyList<(Vec3 A, Vec3 B, Vec3 C, Vec3 Normal)> triangles)
    {
        var felt = new Vec3[triangles.Count * Probes];
        float[] x = new float[Batch], y = new float[Batch], z = new float[Batch];
        float[] distance = new float[Batch], gx = new float[Batch], gy = new float[Batch], gz = new float[Batch];
        var arena = new Arena();
        for (var first = 0; first < felt.Length; first += Batch)
        {
            var count = Math.Min(Batch, felt.Length - first);
            var box = Bounds.Empty;
            for (var i = 0; i < Batch; i++)
            {
                var probe = first + Math.Min(i, count - 1);
                var p = Place(triangles[probe / Probes], probe % Probes);
                (x[i], y[i], z[i]) = ((float)p.X, (float)p.Y, (float)p.Z);
                box = box.Join(new Bounds(p, p));
            }

            var (centre, radius) = (box.Centre, box.Size.Length / 2 + HairMm);
            var near = solid.Near((float)centre.X, (float)centre.Y, (float)centre.Z, (float)radius, out _);
            near.Gradients(x, y, z, distance, gx, gy, gz, arena);
            for (var i = 0; i < count; i++)
            {
                felt[first + i] = new Vec3(gx[i], gy[i], gz[i]).Normalised();
            }
        }

        return felt;
    }

    private static Vec3 Place((Vec3 A, Vec3 B, Vec3 C, Vec3 Normal) triangle, int probe)
    {
        var middle = (triangle.A + triangle.B + triangle.C) / 3;
        return probe switch
        {
            0 => middle,
            1 => (middle + triangle.A) / 2,
            2 => (middle + triangle.B) / 2,
            _ => (middle + triangle.C) / 2,
        };
    }
}
