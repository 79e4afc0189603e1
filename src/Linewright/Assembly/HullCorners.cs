using System.Collections.Immutable;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>The corners of meshes that a flat ground can touch.</summary>
/// <remarks>
/// For each of many directions the farthest vertex. Between two directions an angle a apart a body of radius r can stand out by
/// r a^2 / 8 at most: 4,000 directions are 0.06 apart, which is 1 um for a link of 2.5 mm, under the meshes' own deviation. Calculated.
/// </remarks>
internal static class HullCorners
{
    private const int Directions = 4000;

    /// <summary>The corners of meshes that share a frame.</summary>
    public static ImmutableArray<Vec3> Of(IEnumerable<Mesh> meshes)
    {
        var points = new List<Vec3>();
        foreach (var mesh in meshes)
        {
            for (var i = 0; i < mesh.VertexCount; i++)
            {
                points.Add(mesh.Vertex(i));
            }
        }

        double[] xs = [.. points.Select(p => p.X)], ys = [.. points.Select(p => p.Y)], zs = [.. points.Select(p => p.Z)];
        var found = new int[Directions];
        Parallel.For(0, Directions, i => found[i] = Farthest(xs, ys, zs, Direction(i)));

        // In the order of the vertices: the same corners in the same order, whoever found them first.
        return [.. found.Distinct().Order().Select(i => points[i])];
    }

    private static int Farthest(double[] xs, double[] ys, double[] zs, Vec3 way)
    {
        var (best, farthest) = (0, double.NegativeInfinity);
        for (var i = 0; i < xs.Length; i++)
        {
            var along = xs[i] * way.X + ys[i] * way.Y + zs[i] * way.Z;
            if (along > farthest)
            {
                (best, farthest) = (i, along);
            }
        }

        return best;
    }

    /// <summary>Evenly spread directions, the six axes among them so that flat sides keep their whole outline's extremes.</summary>
    private static Vec3 Direction(int index)
    {
        if (index < 6)
        {
            var sign = index % 2 == 0 ? 1 : -1;
            return sign * (index / 2 == 0 ? Vec3.UnitX : index / 2 == 1 ? Vec3.UnitY : Vec3.UnitZ);
        }

        // Source: the spiral of golden angles on a sphere, Vogel (1979), A better way to construct the sunflower head.
        var z = 1 - 2 * (index - 5.5) / (Directions - 6);
        double r = Math.Sqrt(Math.Max(0, 1 - z * z)), turn = index * Math.PI * (3 - Math.Sqrt(5));
        return new Vec3(r * Math.Cos(turn), r * Math.Sin(turn), z);
    }
}
