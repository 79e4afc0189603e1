using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Which triangles of a fine mesh lie in a flat face of the solid.</summary>
/// <remarks>
/// A vertex is flat where all its triangles lie in one plane; a triangle is flat where one of its vertices is. On a
/// cylinder neighbours along the axis share a plane, those around it do not, so no vertex of it is flat.
/// </remarks>
internal static class FlatFaces
{
    // Sine of the angle between normals. Rounding of float positions tilts a triangle of 25 um by 2e-5 at 4 mm from
    // the origin; a cylinder of 100 mm radius tilts neighbours by 2.5e-4.
    private const float MostTilt = 1e-4f;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool[] Find(Mesh mesh)
    {
        var p = mesh.Positions;
        var triangles = mesh.Triangles;
        var normals = new float[triangles.Length];
        var first = new int[mesh.VertexCount];
        Array.Fill(first, -1);
        var isBent = new bool[mesh.VertexCount];
        for (var i = 0; i < triangles.Length; i += 3)
        {
            int a = triangles[i] * 3, b = triangles[i + 1] * 3, c = triangles[i + 2] * 3;
            float ux = p[b] - p[a], uy = p[b + 1] - p[a + 1], uz = p[b + 2] - p[a + 2];
            float vx = p[c] - p[a], vy = p[c + 1] - p[a + 1], vz = p[c + 2] - p[a + 2];
            float nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
            var scale = 1 / MathF.Sqrt(nx * nx + ny * ny + nz * nz);
            (nx, ny, nz) = (nx * scale, ny * scale, nz * scale);
            (normals[i], normals[i + 1], normals[i + 2]) = (nx, ny, nz);
            for (var k = 0; k < 3; k++)
            {
                // Compare with the first triangle seen at the vertex.
                ref var other = ref first[triangles[i + k]];
                other = other < 0 ? i : other;
                float cx = ny * normals[other + 2] - nz * normals[other + 1];
                float cy = nz * normals[other] - nx * normals[other + 2];
                float cz = nx * normals[other + 1] - ny * normals[other];
                isBent[triangles[i + k]] |= !(cx * cx + cy * cy + cz * cz <= MostTilt * MostTilt);
            }
        }

        var isFlat = new bool[mesh.TriangleCount];
        for (var t = 0; t < isFlat.Length; t++)
        {
            isFlat[t] = !isBent[triangles[t * 3]] || !isBent[triangles[t * 3 + 1]] || !isBent[triangles[t * 3 + 2]];
        }

        return isFlat;
    }
}
