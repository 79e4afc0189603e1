using System.Runtime.CompilerServices;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>Which triangles of a fine mesh lie in a flat face of the solid, and the faces' planes.</summary>
/// <remarks>
/// A vertex is flat where all its neighbours lie in one plane with it; a triangle is flat where one of its vertices is.
/// On a cylinder neighbours along the axis share a plane, those around it do not, so no vertex of it is flat.
/// Flat vertices that share a triangle belong to one face; its plane is the mean of its triangles.
/// </remarks>
internal sealed class FlatFaces
{
    /// <summary>The face of a triangle that is not flat.</summary>
    public const int None = -1;

    // How far rounding may lift a vertex off its plane, mm: some units in the last place of a float at 8 mm. On a
    // cylinder neighbours 25 um apart lie 3e-5 off at 10 mm radius.
    private const float Noise = 4e-6f;

    // Two flat vertices of one face agree in their normals to within a degree.
    private const double MostTurnCosine = 0.9998;

    // A vertex of three or four triangles may lie flat by chance; more than two such side by side do not.
    private const int LeastTriangles = 12;

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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static FlatFaces Find(Mesh mesh, double limit)
    {
        var isBent = FindBent(mesh, out var normals);
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

                // A sliver along an edge has corners that are flat in the faces on both sides.
                if (flatVertex[t] != None && Agree(normals, v, flatVertex[t]))
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

    /// <summary>A wide camber passes for flat step by step: drop faces that leave their plane, and chance patches.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void DropBowed(Mesh mesh, int[] faceOf, List<Plane> planes, double limit)
    {
        var isBowed = new bool[planes.Count];
        var size = new int[planes.Count];
        foreach (var face in faceOf)
        {
            if (face != None)
            {
                size[face]++;
            }
        }

        for (var face = 0; face < size.Length; face++)
        {
            isBowed[face] = size[face] < LeastTriangles;
        }

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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
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
    private static bool[] FindBent(Mesh mesh, out float[] normals)
    {
        // The mean plane at each vertex, its triangles weighted by their area.
        var p = mesh.Positions;
        var triangles = mesh.Triangles;
        normals = new float[p.Length];
        for (var i = 0; i < triangles.Length; i += 3)
        {
            int a = triangles[i] * 3, b = triangles[i + 1] * 3, c = triangles[i + 2] * 3;
            float ux = p[b] - p[a], uy = p[b + 1] - p[a + 1], uz = p[b + 2] - p[a + 2];
            float vx = p[c] - p[a], vy = p[c + 1] - p[a + 1], vz = p[c + 2] - p[a + 2];
            float nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
            for (var k = 0; k < 3; k++)
            {
                var v = triangles[i + k] * 3;
                normals[v] += nx;
                normals[v + 1] += ny;
                normals[v + 2] += nz;
            }
        }

        // Bent where a neighbour leaves that plane.
        var isBent = new bool[mesh.VertexCount];
        for (var i = 0; i < triangles.Length; i++)
        {
            int v = triangles[i] * 3, w = triangles[i % 3 == 2 ? i - 2 : i + 1] * 3;
            float nx = normals[v], ny = normals[v + 1], nz = normals[v + 2];
            var off = nx * (p[w] - p[v]) + ny * (p[w + 1] - p[v + 1]) + nz * (p[w + 2] - p[v + 2]);
            isBent[triangles[i]] |= !(off * off <= Noise * Noise * (nx * nx + ny * ny + nz * nz));
        }

        return isBent;
    }

    private static bool Agree(float[] normals, int v, int w)
    {
        Vec3 a = new(normals[v * 3], normals[v * 3 + 1], normals[v * 3 + 2]), b = new(normals[w * 3], normals[w * 3 + 1], normals[w * 3 + 2]);
        return a.Dot(b) > MostTurnCosine * a.Length * b.Length;
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
