using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>A mesh with a normal at every vertex: smooth over gentle bends, split where the surface has an edge.</summary>
/// <remarks>
/// Around a vertex, triangles that meet along an edge under the crease angle share one normal: the mean of
/// theirs, weighted by the triangle's area and how far its corner opens, so that neither slivers nor a fan's
/// count of triangles pull it over. An edge that does not have exactly two triangles is kept sharp.
/// Triangles without area have no normal and are left out. Output vertices come in order of first use.
/// </remarks>
public sealed class CreasedNormals
{
    /// <summary>The largest bend that still looks round, radians.</summary>
    /// <remarks>Common practice: 30 to 40 degrees; eight-sided rounds (45 degrees) stay faceted, twelve-sided ones turn smooth.</remarks>
    public const double DefaultCrease = 35 * Math.PI / 180;

    private CreasedNormals(float[] positions, float[] normals, int[] triangles)
    {
        Positions = positions;
        Normals = normals;
        Triangles = triangles;
    }

    /// <summary>x, y, z of each vertex, mm.</summary>
    public IReadOnlyList<float> Positions { get; }

    /// <summary>x, y, z of each vertex's unit normal, pointing out.</summary>
    public IReadOnlyList<float> Normals { get; }

    /// <summary>Three vertex indices a triangle.</summary>
    public IReadOnlyList<int> Triangles { get; }

    /// <summary>Smooth shading with edges.</summary>
    /// <param name="mesh">Surface in mm, counter-clockwise seen from outside.</param>
    /// <param name="crease">Triangles that bend by less than this share a normal; radians, 0 to pi.</param>
    public static CreasedNormals Smooth(Mesh mesh, double crease = DefaultCrease)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        Guard.InRange(crease, 0, Math.PI);
        var faces = Faces(mesh);
        var groups = new Groups(faces.Length * 3);
        var least = Math.Cos(crease);
        JoinWhere(mesh, faces, (a, b) => faces[a / 3].Normal.Dot(faces[b / 3].Normal) > least, groups);
        return Build(mesh, faces, groups);
    }

    /// <summary>Smooth shading with the normals of the surface that the mesh follows, not of the triangles that stand for it.</summary>
    /// <param name="mesh">Surface in mm, counter-clockwise seen from outside.</param>
    /// <param name="solid">The solid that was meshed, in the mesh's frame.</param>
    /// <param name="crease">Where the surface turns by less than this at a vertex it is round there; radians, 0 to pi.</param>
    /// <remarks>
    /// Every corner is felt from inside its own triangle, so that an edge of the solid has the normals of both its sides.
    /// A rounded edge that a few triangles stand for is round in this shading, whatever they bend by.
    /// </remarks>
    public static CreasedNormals Of(Mesh mesh, Solid solid, double crease = DefaultCrease)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(solid);
        Guard.InRange(crease, 0, Math.PI);
        var faces = Faces(mesh);
        var felt = SurfaceNormals.AtCorners(solid, [.. faces.Select(face => (mesh.Vertex(face.A), mesh.Vertex(face.B), mesh.Vertex(face.C), face.Normal))]);
        var groups = new Groups(faces.Length * 3);
        var least = Math.Cos(crease);
        JoinWhere(mesh, faces, (a, b) => felt[a].Dot(felt[b]) > least, groups);
        return Build(mesh, faces, groups, felt);
    }

    /// <summary>Flat shading: every triangle has three vertices of its own, with its own normal.</summary>
    public static CreasedNormals Flat(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        var faces = Faces(mesh);
        return Build(mesh, faces, new Groups(faces.Length * 3));
    }

    private static Face[] Faces(Mesh mesh)
    {
        var faces = new List<Face>(mesh.TriangleCount);
        for (var i = 0; i < mesh.Triangles.Length; i += 3)
        {
            int a = mesh.Triangles[i], b = mesh.Triangles[i + 1], c = mesh.Triangles[i + 2];
            var across = (mesh.Vertex(b) - mesh.Vertex(a)).Cross(mesh.Vertex(c) - mesh.Vertex(a));
            if (across.Length > 0)
            {
                faces.Add(new Face(a, b, c, across.Normalised(), across.Length / 2));
            }
        }

        return [.. faces];
    }

    /// <summary>Joins the corners that two neighbours have at each end of their edge, where the surface is gentle between them.</summary>
    private static void JoinWhere(Mesh mesh, Face[] faces, Func<int, int, bool> isGentle, Groups groups)
    {
        // Sort the half-edges so that those of one edge lie side by side.
        var edges = new (long Key, int Face, int Corner)[faces.Length * 3];
        for (var corner = 0; corner < edges.Length; corner++)
        {
            long from = faces[corner / 3][corner % 3], to = faces[corner / 3][(corner + 1) % 3];
            edges[corner] = (Math.Min(from, to) * mesh.VertexCount + Math.Max(from, to), corner / 3, corner);
        }

        Array.Sort(edges);
        for (var first = 0; first < edges.Length;)
        {
            var end = first + 1;
            while (end < edges.Length && edges[end].Key == edges[first].Key)
            {
                end++;
            }

            if (end - first == 2)
            {
                JoinEdge(faces, edges[first].Corner, edges[first + 1].Corner, isGentle, groups);
            }

            first = end;
        }
    }

    private static void JoinEdge(Face[] faces, int cornerA, int cornerB, Func<int, int, bool> isGentle, Groups groups)
    {
        int startA = cornerA, endA = Next(cornerA), startB = cornerB, endB = Next(cornerB);
        // Neighbours of one orientation run along their common edge in opposite directions.
        if (faces[startA / 3][startA % 3] != faces[endB / 3][endB % 3])
        {
            return;
        }

        foreach (var (a, b) in new[] { (startA, endB), (endA, startB) })
        {
            if (isGentle(a, b))
            {
                groups.Join(a, b);
            }
        }
    }

    private static int Next(int corner) => corner % 3 == 2 ? corner - 2 : corner + 1;

    /// <param name="mesh">Positions.</param>
    /// <param name="faces">Triangles with an area.</param>
    /// <param name="groups">Which corners share a vertex.</param>
    /// <param name="felt">Normal of each corner; where null, that of its triangle.</param>
    private static CreasedNormals Build(Mesh mesh, Face[] faces, Groups groups, Vec3[]? felt = null)
    {
        // Sum the weighted normals of each group of corners.
        var sums = new Vec3[faces.Length * 3];
        for (var corner = 0; corner < sums.Length; corner++)
        {
            var face = faces[corner / 3];
            sums[groups.Root(corner)] += (felt is null ? face.Normal : felt[corner]) * (face.Area * Opening(mesh, face, corner % 3));
        }

        // Give each group one output vertex when its first corner comes up.
        var vertexOfGroup = new int[sums.Length];
        Array.Fill(vertexOfGroup, -1);
        var triangles = new int[sums.Length];
        var positions = new List<float>();
        var normals = new List<float>();
        for (var corner = 0; corner < sums.Length; corner++)
        {
            var group = groups.Root(corner);
            if (vertexOfGroup[group] < 0)
            {
                vertexOfGroup[group] = positions.Count / 3;
                var at = mesh.Vertex(faces[corner / 3][corner % 3]);
                var normal = sums[group].Normalised();
                normal = normal == Vec3.Zero ? faces[corner / 3].Normal : normal;
                positions.AddRange([(float)at.X, (float)at.Y, (float)at.Z]);
                normals.AddRange([(float)normal.X, (float)normal.Y, (float)normal.Z]);
            }

            triangles[corner] = vertexOfGroup[group];
        }

        return new CreasedNormals([.. positions], [.. normals], triangles);
    }

    // 1 - cos grows with the angle like the angle itself, and unlike an arc cosine is the same to the last bit everywhere.
    private static double Opening(Mesh mesh, Face face, int corner)
    {
        var at = mesh.Vertex(face[corner]);
        Vec3 u = mesh.Vertex(face[(corner + 1) % 3]) - at, v = mesh.Vertex(face[(corner + 2) % 3]) - at;
        return 1 - u.Normalised().Dot(v.Normalised());
    }

    private readonly record struct Face(int A, int B, int C, Vec3 Normal, double Area)
    {
        public int this[int corner] => corner switch { 0 => A, 1 => B, _ => C };
    }

    /// <summary>Corners that share a normal: disjoint sets, each known by its smallest corner.</summary>
    private sealed class Groups(int count)
    {
        private readonly int[] parents = [.. Enumerable.Range(0, count)];

        public int Root(int corner)
        {
            while (parents[corner] != corner)
            {
                parents[corner] = parents[parents[corner]];
                corner = parents[corner];
            }

            return corner;
        }

        public void Join(int a, int b)
        {
            int rootA = Root(a), rootB = Root(b);
            parents[Math.Max(rootA, rootB)] = Math.Min(rootA, rootB);
        }
    }
}
