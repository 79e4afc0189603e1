using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>Points spread over a mesh to a spacing, edges first, then moved onto the solid's true surface.</summary>
/// <remarks>
/// Every point of the mesh has a sample within one and a half spacings, most within half of one. Simplified meshes
/// have triangles of any shape, so each is filled by rows along its longest edge; where slivers would crowd the
/// samples, one a cube of three quarters of the spacing is kept. The order depends on the mesh alone.
/// </remarks>
internal sealed class SurfaceSamples
{
    // Edge of the cube in which one sample is kept, in spacings: wide enough that a mesh finer than the spacing costs
    // no more than a coarse one, small enough that no row of a lattice is lost.
    private const double Thinning = 0.75;

    /// <summary>Largest distance from a point of the mesh to a sample, in spacings: half a lattice cell's diagonal and half a thinning cube's.</summary>
    public const double CoverInSpacings = 1.5;

    private readonly List<float> x = [], y = [], z = [];
    private readonly HashSet<long> taken = [];
    private readonly Bounds box;
    private readonly double cell;
    private readonly long rowCount, layerCount;
    private readonly Func<Vec3, bool>? where;

    private SurfaceSamples(Bounds box, double spacing, Func<Vec3, bool>? where)
    {
        this.box = box;
        this.where = where;
        cell = spacing * Thinning;
        rowCount = 2 + (long)(box.Size.X / cell);
        layerCount = rowCount * (2 + (long)(box.Size.Y / cell));
    }

    /// <summary>The samples' coordinates, mm; equal lengths.</summary>
    public static (float[] X, float[] Y, float[] Z) Of(Mesh mesh, double spacing, Func<Vec3, bool>? where)
    {
        Guard.Positive(spacing);
        if (mesh.TriangleCount == 0)
        {
            return ([], [], []);
        }

        var samples = new SurfaceSamples(mesh.Bounds, spacing, where);
        var corners = mesh.Triangles;

        // Each edge once, from its lower vertex: contacts and thin spots like edges.
        for (var i = 0; i < corners.Length; i++)
        {
            int from = corners[i], to = corners[i % 3 == 2 ? i - 2 : i + 1];
            if (from < to)
            {
                samples.AddRow(mesh.Vertex(from), mesh.Vertex(to), spacing);
            }
        }

        for (var i = 0; i < corners.Length; i += 3)
        {
            samples.Fill(mesh.Vertex(corners[i]), mesh.Vertex(corners[i + 1]), mesh.Vertex(corners[i + 2]), spacing);
        }

        return ([.. samples.x], [.. samples.y], [.. samples.z]);
    }

    /// <summary>
    /// Moves samples onto the surface by two Newton steps, and returns the distance's gradients from just before the
    /// second, which are the normals; no step is longer than the limit, mm.
    /// </summary>
    public static (float[] X, float[] Y, float[] Z) Project(LocalField field, Span<float> x, Span<float> y, Span<float> z, double limit)
    {
        var n = x.Length;
        float[] d = new float[n], gx = new float[n], gy = new float[n], gz = new float[n];
        for (var round = 0; round < 2; round++)
        {
            field.Gradients(x, y, z, d, gx, gy, gz);
            for (var i = 0; i < n; i++)
            {
                // A gradient well below 1 marks a ridge of the distance, where a Newton step leads nowhere.
                var square = gx[i] * gx[i] + gy[i] * gy[i] + gz[i] * gz[i];
                var step = d[i] / square;
                if (square > 0.25f && MathF.Abs(step) < limit)
                {
                    x[i] -= gx[i] * step;
                    y[i] -= gy[i] * step;
                    z[i] -= gz[i] * step;
                }
            }
        }

        return (gx, gy, gz);
    }

    private void Fill(Vec3 a, Vec3 b, Vec3 c, double spacing)
    {
        // Turn the triangle until its longest edge comes first.
        double ab = (b - a).Length, bc = (c - b).Length, ca = (a - c).Length;
        if (bc >= ab && bc >= ca)
        {
            (a, b, c, ab) = (b, c, a, bc);
        }
        else if (ca >= ab && ca >= bc)
        {
            (a, b, c, ab) = (c, a, b, ca);
        }

        if (ab == 0)
        {
            return;
        }

        var height = (b - a).Cross(c - a).Length / ab;
        var rows = (int)Math.Ceiling(height / spacing);
        for (var j = 1; j < rows; j++)
        {
            var up = (double)j / rows;
            AddRow(a + (c - a) * up, b + (c - b) * up, spacing);
        }
    }

    private void AddRow(Vec3 from, Vec3 to, double spacing)
    {
        var steps = Math.Max(1, (int)Math.Ceiling((to - from).Length / spacing));
        for (var i = 0; i <= steps; i++)
        {
            Add(from + (to - from) * ((double)i / steps));
        }
    }

    private void Add(Vec3 p)
    {
        var u = (p - box.Low) / cell;
        if (taken.Add((long)u.Z * layerCount + (long)u.Y * rowCount + (long)u.X) && (where is null || where(p)))
        {
            x.Add((float)p.X);
            y.Add((float)p.Y);
            z.Add((float)p.Z);
        }
    }
}
