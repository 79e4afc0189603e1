using System.Collections.Immutable;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>A closed convex body with flat faces, in mm: a cut stone, for one. Never changes once built.</summary>
/// <remarks>
/// Exact up to rounding: vertices are solved from their planes and lie within 1e-9 of the body's farthest
/// coordinate of every plane they belong to (1e-6 where planes nearly coincide and have to be taken for one). A body
/// that exists has been proved closed, oriented and of one piece (vertices - edges + faces = 2), with no corner outside
/// a half-space. Distances are negative inside.
/// </remarks>
public sealed class ConvexPolyhedron
{
    private readonly double[] xs;
    private readonly double[] ys;
    private readonly double[] zs;

    private ConvexPolyhedron(ImmutableArray<Vec3> vertices, ImmutableArray<Face> faces)
    {
        Vertices = vertices;
        Faces = faces;
        xs = [.. vertices.Select(v => v.X)];
        ys = [.. vertices.Select(v => v.Y)];
        zs = [.. vertices.Select(v => v.Z)];
        (Volume, Centroid, Inertia) = Moments.Of(vertices, faces);
        Area = faces.Sum(f => f.Area);
        Bounds = new Bounds(new Vec3(xs.Min(), ys.Min(), zs.Min()), new Vec3(xs.Max(), ys.Max(), zs.Max()));
    }

    /// <summary>Corners, mm.</summary>
    public ImmutableArray<Vec3> Vertices { get; }

    /// <summary>Faces in the order of the half-spaces they come from; a half-space that cuts nothing has none.</summary>
    public ImmutableArray<Face> Faces { get; }

    /// <summary>In mm3.</summary>
    public double Volume { get; }

    /// <summary>Of the surface, in mm2.</summary>
    public double Area { get; }

    /// <summary>Centre of mass of the filled body, mm.</summary>
    public Vec3 Centroid { get; }

    /// <summary>About the centroid, unit density, mm5.</summary>
    public InertiaTensor Inertia { get; }

    /// <summary>The box around it.</summary>
    public Bounds Bounds { get; }

    /// <summary>Number of edges.</summary>
    public int EdgeCount => Faces.Sum(f => f.Loop.Length) / 2;

    /// <summary>Cuts the body out of space.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An offset is not finite, or a normal's length is not 1 within 1e-9.</exception>
    public static PolyhedronResult FromPlanes(IReadOnlyList<Plane> planes)
    {
        ArgumentNullException.ThrowIfNull(planes);
        foreach (var plane in planes)
        {
            Guard.Finite(plane.Offset, nameof(planes));
            Guard.InRange(plane.Normal.Length, 1 - 1e-9, 1 + 1e-9, nameof(planes));
        }

        var status = HalfSpaceClipper.Clip(planes, out var vertices, out var cut);
        if (status != PolyhedronStatus.Solid)
        {
            return new PolyhedronResult(status, null);
        }

        var faces = cut.Select(f => new Face(f.Plane, planes[f.Plane], [.. f.Loop], AreaVector(f.Loop, vertices).Length));
        var body = new ConvexPolyhedron([.. vertices], [.. faces]);
        return body.IsClosed() && body.Volume > 0
            ? new PolyhedronResult(PolyhedronStatus.Solid, body)
            : new PolyhedronResult(PolyhedronStatus.Broken, null);
    }

    /// <summary>The same body scaled about the origin.</summary>
    public ConvexPolyhedron Scaled(double factor)
    {
        Guard.Positive(factor);
        return new ConvexPolyhedron(
            [.. Vertices.Select(v => v * factor)],
            [.. Faces.Select(f => f with { Plane = f.Plane.Scaled(factor), Area = f.Area * factor * factor })]);
    }

    /// <summary>The same body placed elsewhere; a mirrored pose turns the loops round so that outside stays outside.</summary>
    public ConvexPolyhedron Moved(Pose pose)
        => new(
            [.. Vertices.Select(pose.Point)],
            [.. Faces.Select(f => f with
            {
                Plane = f.Plane.Moved(pose),
                Loop = pose.IsMirrored ? [.. f.Loop.Reverse()] : f.Loop,
            })]);

    /// <summary>Largest distance over all face planes, mm: exact inside and over a face, never overstated outside.</summary>
    public double DistanceBound(Vec3 p)
    {
        var largest = double.NegativeInfinity;
        foreach (var face in Faces)
        {
            largest = Math.Max(largest, face.Plane.Distance(p));
        }

        return largest;
    }

    /// <summary>True distance from the surface, mm, negative inside.</summary>
    public double ExactDistance(Vec3 p)
    {
        var bound = DistanceBound(p);
        if (bound <= 0)
        {
            return bound;
        }

        // The nearest point lies on a face that the point can see; rounding may hide one that the point is level with.
        var nearest = double.PositiveInfinity;
        var level = -HalfSpaceClipper.OnPlaneShare * Bounds.Size.Length;
        foreach (var face in Faces)
        {
            if (face.Plane.Distance(p) > level)
            {
                nearest = Math.Min(nearest, DistanceToFace(face, p));
            }
        }

        return nearest;
    }

    /// <summary>Index of the corner that lies farthest in a direction.</summary>
    public int Farthest(Vec3 direction)
    {
        var best = 0;
        var farthest = double.NegativeInfinity;
        for (var i = 0; i < xs.Length; i++)
        {
            var along = xs[i] * direction.X + ys[i] * direction.Y + zs[i] * direction.Z;
            if (along > farthest)
            {
                farthest = along;
                best = i;
            }
        }

        return best;
    }

    /// <summary>Fan triangles on shared corners: closed, for measuring and files.</summary>
    public Mesh ToMesh()
    {
        var positions = new float[Vertices.Length * 3];
        for (var i = 0; i < Vertices.Length; i++)
        {
            Put(positions, i, Vertices[i]);
        }

        var triangles = new List<int>();
        foreach (var face in Faces)
        {
            for (var i = 2; i < face.Loop.Length; i++)
            {
                triangles.AddRange([face.Loop[0], face.Loop[i - 1], face.Loop[i]]);
            }
        }

        return new Mesh(positions, [.. triangles]);
    }

    /// <summary>Fan triangles with every face's corners its own: for showing flat facets. Not closed as a graph.</summary>
    public Mesh ToFacetedMesh()
    {
        var positions = new float[Faces.Sum(f => f.Loop.Length) * 3];
        var triangles = new List<int>();
        var next = 0;
        foreach (var face in Faces)
        {
            var first = next;
            foreach (var v in face.Loop)
            {
                Put(positions, next++, Vertices[v]);
            }

            for (var i = first + 2; i < next; i++)
            {
                triangles.AddRange([first, i - 1, i]);
            }
        }

        return new Mesh(positions, [.. triangles]);
    }

    private static void Put(float[] positions, int index, Vec3 p)
        => (positions[index * 3], positions[index * 3 + 1], positions[index * 3 + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);

    private static Vec3 AreaVector(List<int> loop, List<Vec3> vertices)
    {
        var sum = Vec3.Zero;
        for (var i = 2; i < loop.Count; i++)
        {
            sum += (vertices[loop[i - 1]] - vertices[loop[0]]).Cross(vertices[loop[i]] - vertices[loop[0]]);
        }

        return sum * 0.5;
    }

    private double DistanceToFace(Face face, Vec3 p)
    {
        var nearest = double.PositiveInfinity;
        var above = true;
        for (var i = 0; i < face.Loop.Length; i++)
        {
            Vec3 a = Vertices[face.Loop[i]], b = Vertices[face.Loop[(i + 1) % face.Loop.Length]];
            Vec3 along = b - a, from = p - a;
            above &= face.Plane.Normal.Cross(along).Dot(from) >= 0;
            var share = Math.Clamp(from.Dot(along) / along.Dot(along), 0, 1);
            nearest = Math.Min(nearest, (from - along * share).Length);
        }

        return above ? Math.Abs(face.Plane.Distance(p)) : nearest;
    }

    private bool IsClosed()
    {
        var edges = new HashSet<(int, int)>();
        foreach (var face in Faces)
        {
            for (var i = 0; i < face.Loop.Length; i++)
            {
                if (!edges.Add((face.Loop[i], face.Loop[(i + 1) % face.Loop.Length])))
                {
                    return false;
                }
            }
        }

        // Source: Euler (1758), Elementa doctrinae solidorum: vertices - edges + faces = 2.
        return edges.All(e => edges.Contains((e.Item2, e.Item1))) && Vertices.Length - edges.Count / 2 + Faces.Length == 2;
    }
}
