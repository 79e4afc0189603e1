using System.Runtime.InteropServices;
using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>Cuts a large box down by one half-space after another and keeps the surface closed at every step.</summary>
/// <remarks>
/// Each vertex carries a side (inside, on, outside) for the plane at hand, and everything else follows from those
/// sides, so that faces can never disagree about a shared vertex. Planes that run through an existing vertex, as
/// five do at a brilliant's star tip, use that vertex again. A new vertex is computed from its three planes and
/// not along its edge: errors do not add up from cut to cut, and the size of the first box does not matter.
/// Does not polish vertices where more than three planes meet; they are within the tolerance of each.
/// </remarks>
internal sealed class HalfSpaceClipper
{
    /// <summary>A vertex this near to a plane lies on it, as a share of the body's farthest coordinate.</summary>
    /// <remarks>Rounding of three planes meeting at a few degrees stays below 1e-13; the smallest facet detail of a stone is above 1e-4.</remarks>
    public const double OnPlaneShare = 1e-9;

    private const double RoughShare = 1e-6;
    private static readonly double[] RoughShares = [RoughShare, 1e-5, 1e-4, 1e-7, 1e-8, OnPlaneShare];

    // A first box this many times the largest offset: a body that reaches farther counts as unbounded.
    private const double BoxShare = 1000;
    private const int BoxSides = 6;

    private readonly List<Plane> planes = [];
    private readonly List<Vec3> vertices = [];
    private readonly List<sbyte> sides = [];
    private readonly double tolerance;
    private List<ClippedFace> faces = [];

    private HalfSpaceClipper(double boxHalf, double tolerance)
    {
        this.tolerance = tolerance;
        StartBox(boxHalf);
    }

    /// <summary>The surface that the half-spaces leave, or why there is none. Face plane indices are those of the list given.</summary>
    public static PolyhedronStatus Clip(IReadOnlyList<Plane> halfSpaces, out List<Vec3> vertices, out List<ClippedFace> faces)
    {
        var scale = 0.0;
        foreach (var plane in halfSpaces)
        {
            scale = Math.Max(scale, Math.Abs(plane.Offset));
        }

        scale = scale > 0 ? scale : 1;

        // A rough cut finds the body's size. The fine one starts close around it: in a box a thousand times larger,
        // planes that are parallel but for a rounding would cross far out, and a plane that stands far off and cuts
        // nothing would coarsen the tolerance.
        var status = PolyhedronStatus.Broken;
        vertices = [];
        faces = [];
        foreach (var share in RoughShares)
        {
            // Planes that are parallel but for a rounding part far out: by less than one of these, by more than another,
            // and about as much as a third, which then mistakes the size.
            status = Clip(halfSpaces, scale * BoxShare, scale * share, out vertices, out faces);
            if (status == PolyhedronStatus.Solid && Fine(halfSpaces, ref vertices, ref faces) is PolyhedronStatus.Solid)
            {
                return PolyhedronStatus.Solid;
            }
        }

        return status == PolyhedronStatus.Solid ? PolyhedronStatus.Broken : status;
    }

    private static PolyhedronStatus Fine(IReadOnlyList<Plane> halfSpaces, ref List<Vec3> vertices, ref List<ClippedFace> faces)
    {
        var size = vertices.Max(v => Math.Max(Math.Abs(v.X), Math.Max(Math.Abs(v.Y), Math.Abs(v.Z))));
        var status = PolyhedronStatus.Broken;
        for (var share = OnPlaneShare; status != PolyhedronStatus.Solid && share < 2 * RoughShare; share *= 10)
        {
            // Planes that differ by about the tolerance can leave the surface open, or fold it flat and lose it; a coarser
            // one then takes them for one.
            status = Clip(halfSpaces, size * 2, size * share, out vertices, out faces);
            if (status == PolyhedronStatus.Solid && !Holds(halfSpaces, vertices, size * share))
            {
                status = PolyhedronStatus.Broken;
            }
        }

        return status;
    }

    /// <summary>True where every corner lies inside every half-space: planes that nearly coincide can close a surface around too much.</summary>
    private static bool Holds(IReadOnlyList<Plane> halfSpaces, List<Vec3> vertices, double tolerance)
    {
        foreach (var plane in halfSpaces)
        {
            foreach (var vertex in vertices)
            {
                if (plane.Distance(vertex) > 2 * tolerance)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static PolyhedronStatus Clip(
        IReadOnlyList<Plane> halfSpaces, double boxHalf, double tolerance, out List<Vec3> vertices, out List<ClippedFace> faces)
    {
        var clipper = new HalfSpaceClipper(boxHalf, tolerance);
        var status = PolyhedronStatus.Solid;
        foreach (var plane in halfSpaces)
        {
            status = clipper.Cut(plane);
            if (status != PolyhedronStatus.Solid)
            {
                break;
            }
        }

        clipper.Compact(out vertices, out faces);
        return status == PolyhedronStatus.Solid && faces.Exists(f => f.Plane < 0) ? PolyhedronStatus.Unbounded : status;
    }

    private void StartBox(double half)
    {
        for (var corner = 0; corner < 8; corner++)
        {
            vertices.Add(new Vec3((corner & 1) == 0 ? -half : half, (corner & 2) == 0 ? -half : half, (corner & 4) == 0 ? -half : half));
            sides.Add(0);
        }

        AddBoxFace(new Vec3(-1, 0, 0), half, 0, 4, 6, 2);
        AddBoxFace(new Vec3(1, 0, 0), half, 1, 3, 7, 5);
        AddBoxFace(new Vec3(0, -1, 0), half, 0, 1, 5, 4);
        AddBoxFace(new Vec3(0, 1, 0), half, 2, 6, 7, 3);
        AddBoxFace(new Vec3(0, 0, -1), half, 0, 2, 3, 1);
        AddBoxFace(new Vec3(0, 0, 1), half, 4, 5, 7, 6);
    }

    private void AddBoxFace(Vec3 normal, double half, int a, int b, int c, int d)
    {
        faces.Add(new ClippedFace(planes.Count, [a, b, c, d]));
        planes.Add(new Plane(normal, half));
    }

    private PolyhedronStatus Cut(Plane plane)
    {
        planes.Add(plane);
        var (inside, outside) = TakeSides(plane);
        if (!outside)
        {
            return PolyhedronStatus.Solid;
        }

        if (!inside)
        {
            return PolyhedronStatus.Empty;
        }

        // Shorten every face that reaches outside; faces with no vertex truly inside go.
        var faceOfEdge = EdgeOwners(faces, (a, b) => sides[a] * sides[b] < 0);
        var madeOnEdge = new Dictionary<(int, int), int>();
        var kept = new List<ClippedFace>(faces.Count + 1);
        foreach (var face in faces)
        {
            var loop = Shorten(face, faceOfEdge, madeOnEdge);
            if (loop is null)
            {
                return PolyhedronStatus.Broken;
            }

            if (loop.Count >= 3)
            {
                kept.Add(new ClippedFace(face.Plane, loop));
            }
        }

        // The new face closes the hole: its edges are the open ones, turned round.
        var cap = OpenLoop(kept);
        if (cap is null)
        {
            return PolyhedronStatus.Broken;
        }

        kept.Add(new ClippedFace(planes.Count - 1, cap));
        faces = DropVerticesOfTwoFaces(kept);
        return faces.Count >= 4 ? PolyhedronStatus.Solid : PolyhedronStatus.Empty;
    }

    private (bool Inside, bool Outside) TakeSides(Plane plane)
    {
        foreach (ref var side in CollectionsMarshal.AsSpan(sides))
        {
            side = 0;
        }

        bool inside = false, outside = false;
        foreach (var face in faces)
        {
            foreach (var v in face.Loop)
            {
                var distance = plane.Distance(vertices[v]);
                sides[v] = distance > tolerance ? (sbyte)1 : distance < -tolerance ? (sbyte)-1 : (sbyte)0;
                inside |= sides[v] < 0;
                outside |= sides[v] > 0;
            }
        }

        return (inside, outside);
    }

    private static Dictionary<(int From, int To), int> EdgeOwners(List<ClippedFace> faces, Func<int, int, bool> counts)
    {
        var owners = new Dictionary<(int, int), int>();
        for (var f = 0; f < faces.Count; f++)
        {
            var loop = faces[f].Loop;
            for (var i = 0; i < loop.Count; i++)
            {
                int from = loop[i], to = loop[(i + 1) % loop.Count];
                if (counts(from, to))
                {
                    owners[(from, to)] = f;
                }
            }
        }

        return owners;
    }

    private List<int>? Shorten(ClippedFace face, Dictionary<(int From, int To), int> faceOfEdge, Dictionary<(int, int), int> madeOnEdge)
    {
        if (face.Loop.TrueForAll(v => sides[v] <= 0))
        {
            return face.Loop.Exists(v => sides[v] < 0) ? face.Loop : [];
        }

        var loop = new List<int>(face.Loop.Count + 1);
        var inside = false;
        for (var i = 0; i < face.Loop.Count; i++)
        {
            int a = face.Loop[i], b = face.Loop[(i + 1) % face.Loop.Count];
            inside |= sides[a] < 0;
            if (sides[a] <= 0)
            {
                loop.Add(a);
            }

            if (sides[a] * sides[b] < 0)
            {
                var key = a < b ? (a, b) : (b, a);
                if (!madeOnEdge.TryGetValue(key, out var made))
                {
                    if (!faceOfEdge.TryGetValue((b, a), out var neighbour)
                        || Meet(planes[face.Plane], planes[faces[neighbour].Plane], planes[^1]) is not { } point)
                    {
                        return null;
                    }

                    made = vertices.Count;
                    vertices.Add(point);
                    sides.Add(0);
                    madeOnEdge[key] = made;
                }

                loop.Add(made);
            }
        }

        return inside ? loop : [];
    }

    private static Vec3? Meet(Plane a, Plane b, Plane c)
    {
        // Source: rule of Cramer, written with outer products.
        Vec3 bc = b.Normal.Cross(c.Normal), ca = c.Normal.Cross(a.Normal), ab = a.Normal.Cross(b.Normal);
        var volume = a.Normal.Dot(bc);
        return volume == 0 ? null : (bc * a.Offset + ca * b.Offset + ab * c.Offset) / volume;
    }

    private List<int>? OpenLoop(List<ClippedFace> kept)
    {
        // Only edges between two vertices on the plane can have lost the face on their other side.
        var owners = EdgeOwners(kept, (a, b) => sides[a] == 0 && sides[b] == 0);
        var next = new Dictionary<int, int>();
        var start = int.MaxValue;
        foreach (var (from, to) in owners.Keys)
        {
            if (!owners.ContainsKey((to, from)))
            {
                if (!next.TryAdd(to, from))
                {
                    return null;
                }

                start = Math.Min(start, to);
            }
        }

        var loop = new List<int>(next.Count);
        var at = start;
        while (next.TryGetValue(at, out var following) && loop.Count <= next.Count)
        {
            loop.Add(at);
            at = following;
            if (at == start)
            {
                return loop.Count == next.Count && loop.Count >= 3 ? loop : null;
            }
        }

        return null;
    }

    private List<ClippedFace> DropVerticesOfTwoFaces(List<ClippedFace> faces)
    {
        // Where two cuts run through one vertex along one line, only two faces are left there: it is no corner any more.
        while (true)
        {
            var count = new int[vertices.Count];
            foreach (var face in faces)
            {
                foreach (var v in face.Loop)
                {
                    count[v]++;
                }
            }

            var changed = false;
            foreach (var face in faces)
            {
                changed |= face.Loop.RemoveAll(v => count[v] < 3) > 0;
            }

            changed |= faces.RemoveAll(f => f.Loop.Count < 3) > 0;
            if (!changed)
            {
                return faces;
            }
        }
    }

    private void Compact(out List<Vec3> usedVertices, out List<ClippedFace> numberedFaces)
    {
        var place = new Dictionary<int, int>();
        usedVertices = [];
        numberedFaces = [];
        foreach (var face in faces)
        {
            var loop = new List<int>(face.Loop.Count);
            foreach (var v in face.Loop)
            {
                if (!place.TryGetValue(v, out var index))
                {
                    index = usedVertices.Count;
                    place[v] = index;
                    usedVertices.Add(vertices[v]);
                }

                loop.Add(index);
            }

            numberedFaces.Add(new ClippedFace(face.Plane - BoxSides, loop));
        }

        numberedFaces.Sort((a, b) => a.Plane.CompareTo(b.Plane));
    }
}
