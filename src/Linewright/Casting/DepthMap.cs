using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>A mesh seen from one side along a grid of parallel rays: where each ray meets it, from the outside inwards. mm.</summary>
/// <remarks>Rays that run exactly through an edge may be counted by both its triangles; such twins are taken as one.</remarks>
internal sealed class DepthMap
{
    // Two crossings nearer than this are one.
    private const double TwinMm = 1e-3;

    private readonly List<(double At, double Square)>?[] crossings;
    private readonly Vec3 start, u, v, outward;
    private readonly double step;

    private DepthMap(Bounds box, Vec3 outward, double step)
    {
        (this.outward, this.step) = (outward, step);
        (u, v) = Math.Abs(outward.Z) > 0.5 ? (Vec3.UnitX, Vec3.UnitY) : Math.Abs(outward.Y) > 0.5 ? (Vec3.UnitX, Vec3.UnitZ) : (Vec3.UnitY, Vec3.UnitZ);

        // An odd number of rays, so that one runs through the middle.
        int halfU = (int)Math.Ceiling(box.Size.Dot(u) / 2 / step), halfV = (int)Math.Ceiling(box.Size.Dot(v) / 2 / step);
        (CountU, CountV) = (2 * halfU + 1, 2 * halfV + 1);
        start = box.Centre + outward * (Math.Abs(box.Size.Dot(outward)) / 2) - u * (halfU * step) - v * (halfV * step);
        crossings = new List<(double, double)>?[CountU * CountV];
    }

    /// <summary>Rays along the first side.</summary>
    public int CountU { get; }

    /// <summary>Rays along the second side.</summary>
    public int CountV { get; }

    /// <summary>Looks at a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="outward">Unit vector along an axis, towards the looker.</param>
    /// <param name="step">Distance between rays.</param>
    public static DepthMap Of(Mesh mesh, Vec3 outward, double step)
    {
        var map = new DepthMap(mesh.Bounds, outward, step);
        var triangles = mesh.Triangles;
        for (var t = 0; t < triangles.Length; t += 3)
        {
            map.Add(mesh.Vertex(triangles[t]), mesh.Vertex(triangles[t + 1]), mesh.Vertex(triangles[t + 2]));
        }

        foreach (var list in map.crossings)
        {
            list?.Sort();
        }

        return map;
    }

    /// <summary>A point on a ray, by its depth.</summary>
    public Vec3 PointAt(int i, int j, double depth) => start + u * (i * step) + v * (j * step) - outward * depth;

    /// <summary>The first face that a ray meets: where, how squarely (1 is face on), and how much metal lies behind; false where it meets none.</summary>
    public bool First(int i, int j, out Vec3 point, out double depth, out double square, out double section)
    {
        (point, depth, square, section) = (Vec3.Zero, 0, 0, 0);
        if (i < 0 || j < 0 || i >= CountU || j >= CountV || crossings[i * CountV + j] is not { Count: > 0 } list)
        {
            return false;
        }

        (depth, square) = list[0];
        point = PointAt(i, j, depth);
        foreach (var (at, _) in list)
        {
            if (at - depth > TwinMm)
            {
                section = at - depth;
                break;
            }
        }

        return true;
    }

    private void Add(Vec3 a, Vec3 b, Vec3 c)
    {
        var normal = (b - a).Cross(c - a);
        var facing = normal.Dot(outward);
        if (Math.Abs(facing) < 1e-12)
        {
            return;
        }

        double au = (a - start).Dot(u) / step, av = (a - start).Dot(v) / step, bu = (b - start).Dot(u) / step, bv = (b - start).Dot(v) / step;
        double cu = (c - start).Dot(u) / step, cv = (c - start).Dot(v) / step;
        int lowU = (int)Math.Ceiling(Math.Min(au, Math.Min(bu, cu))), highU = (int)Math.Floor(Math.Max(au, Math.Max(bu, cu)));
        int lowV = (int)Math.Ceiling(Math.Min(av, Math.Min(bv, cv))), highV = (int)Math.Floor(Math.Max(av, Math.Max(bv, cv)));
        var area = (bu - au) * (cv - av) - (cu - au) * (bv - av);
        for (var i = Math.Max(0, lowU); i <= Math.Min(CountU - 1, highU); i++)
        {
            for (var j = Math.Max(0, lowV); j <= Math.Min(CountV - 1, highV); j++)
            {
                double wb = ((i - au) * (cv - av) - (cu - au) * (j - av)) / area, wc = ((bu - au) * (j - av) - (i - au) * (bv - av)) / area;
                if (wb >= 0 && wc >= 0 && wb + wc <= 1)
                {
                    var point = a * (1 - wb - wc) + b * wb + c * wc;
                    (crossings[i * CountV + j] ??= []).Add(((start - point).Dot(outward), facing / normal.Length));
                }
            }
        }
    }
}
