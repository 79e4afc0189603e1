using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>A closed surface made ready to be drawn from any side: triangles, the normals of the surface that they stand for, its edges.</summary>
/// <remarks>
/// A corner has its own normal in every triangle. Where the normals on both sides of an edge agree, the surface is smooth
/// there and shows a line only where it turns away from the eye; where they do not, there is an edge. In its own frame, mm.
/// </remarks>
public sealed class OutlineBody
{
    private OutlineBody(Vec3[] corners, Vec3[] normals, int[] places, List<BodyEdge> edges, List<BodyBend> bends)
        => (Corners, Normals, Places, Edges, Bends) = (corners, normals, places, edges, bends);

    /// <summary>The bend from which an edge is drawn, radians.</summary>
    /// <remarks>Assumed: below 20 degrees two faces read as one.</remarks>
    public const double DefaultCrease = 20 * Math.PI / 180;

    /// <summary>Three corners a triangle.</summary>
    internal Vec3[] Corners { get; }

    /// <summary>The surface's normal at each corner.</summary>
    internal Vec3[] Normals { get; }

    /// <summary>Which place each corner stands on: corners of one place share a number.</summary>
    internal int[] Places { get; }

    /// <summary>Edges of the body.</summary>
    internal IReadOnlyList<BodyEdge> Edges { get; }

    /// <summary>Sides where two triangles bend, by less than an edge: drawn only where one of them faces the eye and the other does not.</summary>
    internal IReadOnlyList<BodyBend> Bends { get; }

    /// <summary>Number of triangles.</summary>
    public int TriangleCount => Corners.Length / 3;

    /// <summary>A surface with a normal at every vertex, whose vertices are split along its edges.</summary>
    /// <param name="positions">x, y, z of each vertex, mm.</param>
    /// <param name="normals">x, y, z of each vertex's unit normal, pointing out.</param>
    /// <param name="triangles">Three vertex indices a triangle, counter-clockwise seen from outside.</param>
    /// <param name="crease">The bend from which an edge is drawn, radians.</param>
    /// <exception cref="ArgumentException">The lists do not fit together.</exception>
    public static OutlineBody Of(IReadOnlyList<float> positions, IReadOnlyList<float> normals, IReadOnlyList<int> triangles, double crease = DefaultCrease)
    {
        ArgumentNullException.ThrowIfNull(positions);
        ArgumentNullException.ThrowIfNull(normals);
        ArgumentNullException.ThrowIfNull(triangles);
        if (positions.Count != normals.Count || positions.Count % 3 != 0 || triangles.Count % 3 != 0)
        {
            throw new ArgumentException("positions and normals come in threes, as many of the one as of the other");
        }

        Vec3 At(IReadOnlyList<float> from, int vertex) => new(from[3 * vertex], from[3 * vertex + 1], from[3 * vertex + 2]);
        return Of([.. triangles.Select(v => At(positions, v))], [.. triangles.Select(v => At(normals, v).Normalised())], crease);
    }

    /// <summary>A body with flat faces: each of its edges is drawn that bends by more than the crease.</summary>
    public static OutlineBody Of(ConvexPolyhedron body, double crease = DefaultCrease)
    {
        ArgumentNullException.ThrowIfNull(body);
        List<Vec3> corners = [], normals = [];
        foreach (var face in body.Faces)
        {
            for (var i = 2; i < face.Loop.Length; i++)
            {
                corners.AddRange([body.Vertices[face.Loop[0]], body.Vertices[face.Loop[i - 1]], body.Vertices[face.Loop[i]]]);
                normals.AddRange([face.Plane.Normal, face.Plane.Normal, face.Plane.Normal]);
            }
        }

        return Of([.. corners], [.. normals], crease);
    }

    private static OutlineBody Of(Vec3[] corners, Vec3[] normals, double crease)
    {
        Guard.InRange(crease, 0, Math.PI);

        // Corners at one place are one, whatever their normals.
        var numbers = new Dictionary<Vec3, int>();
        var places = new int[corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            numbers.TryAdd(corners[i], numbers.Count);
            places[i] = numbers[corners[i]];
        }

        // A side has two triangles; one that has but one is the rim of an open surface, which no solid has, and is not drawn.
        var halves = new Dictionary<long, int>();
        var edges = new List<BodyEdge>();
        var bends = new List<BodyBend>();
        var least = Math.Cos(crease);
        for (var corner = 0; corner < corners.Length; corner++)
        {
            int next = Next(corner), low = Math.Min(places[corner], places[next]), high = Math.Max(places[corner], places[next]);
            if (low == high)
            {
                continue;
            }

            var key = Key(low, high);
            if (!halves.Remove(key, out var other))
            {
                halves.Add(key, corner);
                continue;
            }

            // The other runs the other way round.
            int otherStart = other, otherEnd = Next(other);
            if (places[otherStart] == places[corner])
            {
                (otherStart, otherEnd) = (otherEnd, otherStart);
            }

            var bend = (normals[corner].Dot(normals[otherEnd]) + normals[next].Dot(normals[otherStart])) / 2;
            if (bend < least)
            {
                edges.Add(new BodyEdge(corner, (normals[corner] + normals[otherEnd]).Normalised(), (normals[next] + normals[otherStart]).Normalised()));
            }
            else if (normals[corner] != normals[otherEnd] || normals[next] != normals[otherStart])
            {
                bends.Add(new BodyBend(corner, otherEnd, otherStart));
            }
        }

        return new OutlineBody(corners, normals, places, edges, bends);
    }

    /// <summary>The corner after another in its triangle.</summary>
    internal static int Next(int corner) => corner % 3 == 2 ? corner - 2 : corner + 1;

    /// <summary>One number for two places.</summary>
    internal static long Key(int low, int high) => ((long)low << 32) | (uint)high;
}
