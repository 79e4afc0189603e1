using System.Runtime.CompilerServices;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>Which triangles of a fine mesh lie in a flat face of the solid, and the faces' planes.</summary>
/// <remarks>
/// A vertex is flat where all its triangles lie in one plane; a triangle is flat where one of its vertices is. On a
/// cylinder neighbours along the axis share a plane, those around it do not, so no vertex of it is flat.
/// Flat vertices that share a triangle belong to one face; its plane is the mean of its triangles.
/// </remarks>
internal sealed class FlatFaces
{
    /// <summary>The face of a triangle that is not flat.</summary>
    public const int None = -1;

    // Sine of the angle between normals. Rounding of float positions tilts a triangle of 25 um by 2e-5 at 4 mm from
    // the origin; a cylinder of 100 mm radius tilts neighbours by 2.5e-4.
    private const float MostTilt = 1e-4f;

    private FlatFaces(int[] faceOf, Plane[] planes)
    {
        FaceOf = faceOf;
        Planes = planes;
    }

    /// <summary>The face of each triangle, or <see cref="None"/>.</summary>
    public int[] FaceOf { get; }

    /// <summary>The planes of the faces.</summary>
    public Plane[] Planes { get; }

    /// <summary>Finds the faces whose triangles all keep to the plane within a limit, mm.</summary>
    public static FlatFaces Find(Mesh mesh, double limit)
    {
        var isBent = FindBent(mesh);
        var triangles = mesh.Triangles;
        var parent = new int[mesh.VertexCount];
        for (var v = 0; v < parent.Length; v++)
        {
            parent[v] = v;
        }

        // Join the flat vertices of each triangle.
        var flatVertex = new int[mesh.TriangleCount];
        for (var t = 0; t < flatVertex.Length; t++)
        {
            flatVertex[t] = None;
            for (var k = 0; k < 3; k++)
            {
                var v = triangles[t * 3 + k];
                if (isBent[v])
                {
                    continue;
                }

                if (flatVertex[t] != None)
                {
                    parent[Root(parent, v)] = Root(parent, flatVertex[t]);
                }

                flatVertex[t] = v;
            }
        }

        // Number the faces and sum up their planes.
        var faceAt = new Dictionary<int, int>();
        var sums = new List<(Vec3 Normal, Vec3 Middle, double Weight)>();
        var faceOf = new int[mesh.TriangleCount];
        for (var t = 0; t < faceOf.Length; t++)
        {
            faceOf[t] = None;
            if (flatVertex[t] == None)
            {
                continue;
            }

            var root = Root(parent, flatVertex[t]);
            if (!faceAt.TryGetValue(root, out var face))
            {
                face = sums.Count;
                faceAt.Add(root, face);
                sums.Add(default);
            }

            faceOf[t] = face;
            Vec3 a = mesh.Vertex(triangles[t * 3]), b = mesh.Vertex(triangles[t * 3 + 1]), c = mesh.Vertex(triangles[t * 3 + 2]);
            var normal = (b - a).Cross(c - a);
            var weight = normal.Length;
            var (n, m, w) = sums[face];
            sums[face] = (n + normal, m + (a + b + c) * (weight / 3), w + weight);
        }

        var planes = sums.ConvertAll(sum =>
        {
            var normal = sum.Normal.Normalised();
            return new Plane(normal, normal.Dot(sum.Middle / sum.Weight));
        });
        DropBowed(mesh, faceOf, planes, limit);
        AddCorners(mesh, faceOf, planes, limit);
        return new FlatFaces(faceOf, [.. planes]);
    }

    /// <summary>A wide camber passes for flat step by step: drop faces that leave their plane.</summary>
    private static void DropBowed(Mesh mesh, int[] faceOf, List<Plane> planes, double limit)
    {
        var isBowed = new bool[planes.Count];
        for (var t = 0; t < faceOf.Length; t++)
        {
            for (var k = 0; k < 3 && faceOf[t] != None; k++)
            {
                isBowed[faceOf[t]] |= !(Math.Abs(planes[faceOf[t]].Distance(mesh.Vertex(mesh.Triangles[t * 3 + k]))) <= limit);
            }
        }

        for (var t = 0; t < faceOf.Length; t++)
        {
            faceOf[t] = faceOf[t] != None && isBowed[faceOf[t]] ? None : faceOf[t];
        }
    }

    /// <summary>A triangle in a corner or a narrow end has no flat vertex: it belongs to a face that it touches and lies in.</summary>
    private static void AddCorners(Mesh mesh, int[] faceOf, List<Plane> planes, double limit)
    {
        const int most = 3;
        var facesAt = new int[planes.Count == 0 ? 0 : mesh.VertexCount * most];
        Array.Fill(facesAt, None);
        var triangles = mesh.Triangles;
        for (var i = 0; i < triangles.Length; i++)
        {
            var face = faceOf[i / 3];
            if (face == None)
            {
                continue;
            }

            var faces = facesAt.AsSpan(triangles[i] * most, most);
            for (var k = 0; k < most && faces[k] != face; k++)
            {
                if (faces[k] == None)
                {
                    faces[k] = face;
                    break;
                }
            }
        }

        for (var t = 0; t < faceOf.Length && facesAt.Length > 0; t++)
        {
            for (var k = 0; k < 3 * most && faceOf[t] == None; k++)
            {
                var face = facesAt[triangles[t * 3 + k / most] * most + k % most];
                faceOf[t] = face != None && Holds(planes[face], t) ? face : None;
            }
        }

        bool Holds(Plane plane, int t)
        {
            Vec3 a = mesh.Vertex(mesh.Triangles[t * 3]), b = mesh.Vertex(mesh.Triangles[t * 3 + 1]), c = mesh.Vertex(mesh.Triangles[t * 3 + 2]);
            return Math.Abs(plane.Distance(a)) <= limit && Math.Abs(plane.Distance(b)) <= limit && Math.Abs(plane.Distance(c)) <= limit
                && plane.Normal.Dot((b - a).Cross(c - a)) > 0;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool[] FindBent(Mesh mesh)
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

        return isBent;
    }

    private static int Root(int[] parent, int v)
    {
        while (parent[v] != v)
        {
            parent[v] = parent[parent[v]];
            v = parent[v];
        }

        return v;
    }

    /// <summary>All points p with normal . p = offset; unit normal.</summary>
    public readonly record struct Plane(Vec3 Normal, double Offset)
    {
        /// <summary>Signed distance, mm.</summary>
        public double Distance(Vec3 p) => Normal.Dot(p) - Offset;
    }
}
