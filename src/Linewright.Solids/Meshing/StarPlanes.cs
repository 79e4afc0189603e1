using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>The planes that the triangles round each vertex stand for, summed up as quadrics about an origin.</summary>
internal sealed class StarPlanes(ChunkMesh mesh, FlatFaces.Plane[] planes, Vec3 origin, double deviation)
{
    // Draws vertices into flat faces first; above a hundred it would outweigh the curved faces that end at them.
    private const double FlatStiffness = 10;

    private const int AtOnce = 256; // points a batch
    private const double LeastSlope = 0.3; // of the distance: below it a gradient says little

    // A centroid off by this part of the deviation has a vertex that may be off by more.
    private const double OffShare = 0.3;
    private const double LeastArea = 1e-16; // square mm, twice: no direction below

    /// <summary>Gives every vertex the planes of its triangles: flat faces their own, elsewhere the true surface's.</summary>
    /// <remarks>
    /// The surface's tangent plane at the centroid, not the triangle's: where the fine mesh cuts a sharp edge short its
    /// triangles lie in no face of the solid.
    /// </remarks>
    /// <param name="solid">The solid near the piece.</param>
    /// <param name="quadrics">Added to, by vertex.</param>
    /// <param name="isOff">Set for vertices beside a centroid that lies off the surface.</param>
    /// <param name="arena">Scratch memory.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Gather(Solid solid, Quadric[] quadrics, bool[] isOff, Arena arena)
    {
        var arenaMark = arena.Mark;
        var count = mesh.FaceOf.Length;
        Span<float> x = arena.Take(AtOnce), y = arena.Take(AtOnce), z = arena.Take(AtOnce), d = arena.Take(AtOnce);
        Span<float> gx = arena.Take(AtOnce), gy = arena.Take(AtOnce), gz = arena.Take(AtOnce);
        for (var start = 0; start < count; start += AtOnce)
        {
            var n = Math.Min(AtOnce, count - start);
            for (var i = 0; i < AtOnce; i++)
            {
                var t = (start + Math.Min(i, n - 1)) * 3;
                int a = mesh.Corners[t] * 3, b = mesh.Corners[t + 1] * 3, c = mesh.Corners[t + 2] * 3;
                var p = mesh.Positions;
                (x[i], y[i], z[i]) = ((p[a] + p[b] + p[c]) / 3, (p[a + 1] + p[b + 1] + p[c + 1]) / 3, (p[a + 2] + p[b + 2] + p[c + 2]) / 3);
            }

            solid.Gradients(x, y, z, d, gx, gy, gz, arena);
            for (var i = 0; i < n; i++)
            {
                AddPlane(start + i, new Vec3(x[i], y[i], z[i]), d[i], new Vec3(gx[i], gy[i], gz[i]), quadrics, isOff);
            }
        }

        arena.Release(arenaMark);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddPlane(int triangle, Vec3 centroid, double distance, Vec3 gradient, Quadric[] quadrics, bool[] isOff)
    {
        int a = mesh.Corners[triangle * 3], b = mesh.Corners[triangle * 3 + 1], c = mesh.Corners[triangle * 3 + 2];
        Vec3 corner = At(a), across = (At(b) - corner).Cross(At(c) - corner);
        double twiceArea = across.Length, slope = gradient.Length;
        if (twiceArea < LeastArea)
        {
            return;
        }

        var isOffHere = Math.Abs(distance) > OffShare * deviation;
        isOff[a] |= isOffHere;
        isOff[b] |= isOffHere;
        isOff[c] |= isOffHere;
        var stiffness = 1.0;
        Vec3 normal = across / twiceArea, on = corner;
        if (mesh.FaceOf[triangle] != FlatFaces.None)
        {
            var plane = planes[mesh.FaceOf[triangle]];
            (normal, on, stiffness) = (plane.Normal, plane.Normal * plane.Offset, FlatStiffness);
        }
        else if (slope > LeastSlope)
        {
            normal = gradient / slope;
            on = centroid - normal * (distance / slope);
        }

        var quadric = Quadric.OfPlane(normal.X, normal.Y, normal.Z, -normal.Dot(on - origin), twiceArea, stiffness);
        quadrics[a].Add(in quadric);
        quadrics[b].Add(in quadric);
        quadrics[c].Add(in quadric);
    }

    private Vec3 At(int vertex) => new(mesh.Positions[vertex * 3], mesh.Positions[vertex * 3 + 1], mesh.Positions[vertex * 3 + 2]);
}
