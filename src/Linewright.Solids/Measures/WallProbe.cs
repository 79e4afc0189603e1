using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>One run of the wall measure: all samples of a surface, step by step in batches.</summary>
internal sealed class WallProbe
{
    // Largest move of a sample from the mesh onto the surface, mm.
    private const double MostProjectionMm = 0.1;

    // Cubes of this edge hold few operands and some hundred samples.
    private const double CellMm = 0.4;

    // Slack of the ball test: a part of the radius and the rounding of single precision, so that curvature of the
    // same radius passes, mm.
    private const float Share = 2e-3f, RoundingMm = 1e-5f;

    // Halvings of the radius: limit / 2^11 is below a micrometre for limits up to 2 mm.
    private const int Halvings = 11;

    // How far past the ball's centre the far side is asked for, in radii and mm.
    private const float Past = 0.05f, PastMm = 2e-3f;

    // The far point must be this near to the surface, in radii and mm; deeper, it lies on a surface inside the body.
    private const float OnSurface = 0.1f, OnSurfaceMm = 5e-3f;

    // A march through the body ends this near to the far surface, and has failed after so many steps.
    private const float EndMm = 2e-4f;
    private const int MostSteps = 96;

    // Far enough from the surface for single precision to know inside from outside, mm.
    private const float BesideMm = 2e-3f;

    private readonly LocalField field;
    private readonly float limit;

    // Below this cosine the far surface faces the other way.
    private readonly float opposed;
    private readonly float[] x, y, z, nx, ny, nz;

    public WallProbe(Solid solid, Mesh surface, double limit, double spacing, double widestWedge, Func<Vec3, bool>? where)
    {
        this.limit = (float)limit;
        opposed = (float)-Math.Cos(widestWedge);
        var box = surface.VertexCount == 0 ? Bounds.Around(1, 1, 1) : surface.Bounds;
        field = new LocalField(solid, box.Grown(MostProjectionMm), CellMm);
        (x, y, z) = SurfaceSamples.Of(surface, spacing, where);
        (nx, ny, nz) = SurfaceSamples.Project(field, x, y, z, MostProjectionMm);
        var off = new float[x.Length];
        field.Distances(x, y, z, off);
        var kept = 0;
        for (var i = 0; i < x.Length; i++)
        {
            // A sample that did not reach the surface, at a rounded knife edge for one, says nothing about a wall.
            var length = MathF.Sqrt(nx[i] * nx[i] + ny[i] * ny[i] + nz[i] * nz[i]);
            if (MathF.Abs(off[i]) > BesideMm / 4 || length == 0)
            {
                continue;
            }

            (x[kept], y[kept], z[kept]) = (x[i], y[i], z[i]);
            (nx[kept], ny[kept], nz[kept]) = (nx[i] / length, ny[i] / length, nz[i] / length);
            kept++;
        }

        Array.Resize(ref x, kept);
        Array.Resize(ref y, kept);
        Array.Resize(ref z, kept);
        TurnOutwards();
    }

    /// <summary>Measures, and returns the samples below the limit in their order.</summary>
    public List<WallSample> Run()
    {
        var radius = Thin(out var thin);
        var hidden = new List<int>();
        var thickness = Judge(thin, radius, hidden);
        MarchThrough(hidden, thickness);
        var samples = new List<WallSample>();
        foreach (var i in thin)
        {
            if (thickness[i] < limit)
            {
                samples.Add(new WallSample(new Vec3(x[i], y[i], z[i]), new Vec3(nx[i], ny[i], nz[i]), thickness[i]));
            }
        }

        return samples;
    }

    /// <summary>Turns normals that point inwards: on the surface itself rounding decides which side an outline's distance is on.</summary>
    private void TurnOutwards()
    {
        var all = new int[x.Length];
        var way = new float[x.Length];
        for (var i = 0; i < all.Length; i++)
        {
            (all[i], way[i]) = (i, BesideMm);
        }

        var d = Depths(all, way);
        for (var i = 0; i < all.Length; i++)
        {
            if (d[i] > BesideMm / 2)
            {
                (nx[i], ny[i], nz[i]) = (-nx[i], -ny[i], -nz[i]);
            }
        }
    }

    /// <summary>The samples where a ball of the limit's diameter does not fit, and the largest radius that does.</summary>
    private float[] Thin(out int[] thin)
    {
        // One ball of the limit's size sorts out most samples.
        var all = new int[x.Length];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = i;
        }

        var low = new float[x.Length];
        var high = new float[x.Length];
        Array.Fill(high, limit / 2);
        var d = Depths(all, high);
        thin = Array.FindAll(all, i => !Fits(d[i], high[i]));

        // Halve between a radius that fits and one that does not.
        var middle = new float[x.Length];
        for (var round = 0; round < Halvings; round++)
        {
            foreach (var i in thin)
            {
                middle[i] = (low[i] + high[i]) / 2;
            }

            d = Depths(thin, middle);
            for (var k = 0; k < thin.Length; k++)
            {
                var i = thin[k];
                if (Fits(d[k], middle[i]))
                {
                    low[i] = middle[i];
                }
                else
                {
                    high[i] = middle[i];
                }
            }
        }

        return low;
    }

    private static bool Fits(float depth, float radius) => depth <= RoundingMm - radius * (1 - Share);

    /// <summary>Thickness where the far side is a wall; infinite where it is not; the hidden ones are listed.</summary>
    private float[] Judge(int[] thin, float[] radius, List<int> hidden)
    {
        // The gradient just past the centre points at the surface that stopped the ball.
        var n = thin.Length;
        float[] past = new float[x.Length], d = new float[n], gx = new float[n], gy = new float[n], gz = new float[n];
        foreach (var i in thin)
        {
            past[i] = radius[i] * (1 + Past) + PastMm;
        }

        var (cx, cy, cz) = Inward(thin, past);
        field.Gradients(cx, cy, cz, d, gx, gy, gz);
        var thickness = new float[x.Length];
        Array.Fill(thickness, float.PositiveInfinity);
        float[] qx = new float[n], qy = new float[n], qz = new float[n], there = new float[n];
        for (var k = 0; k < n; k++)
        {
            (qx[k], qy[k], qz[k]) = (cx[k] - gx[k] * d[k], cy[k] - gy[k] * d[k], cz[k] - gz[k] * d[k]);
        }

        field.Distances(qx, qy, qz, there);
        for (var k = 0; k < n; k++)
        {
            var i = thin[k];
            if (there[k] < -(radius[i] * OnSurface + OnSurfaceMm))
            {
                hidden.Add(i);
            }
            else if (gx[k] * nx[i] + gy[k] * ny[i] + gz[k] * nz[i] < opposed)
            {
                // The ball that touches the surface at the sample and passes through the far point. Beside an edge the
                // halving stopped at the side a little early; this is the wall itself.
                float ux = x[i] - qx[k], uy = y[i] - qy[k], uz = z[i] - qz[k];
                var across = ux * nx[i] + uy * ny[i] + uz * nz[i];
                thickness[i] = across > radius[i] ? (ux * ux + uy * uy + uz * uz) / across : 2 * radius[i];
            }
        }

        return thickness;
    }

    /// <summary>The way straight through where something inside the body hides the far side.</summary>
    private void MarchThrough(List<int> hidden, float[] thickness)
    {
        // Step by the distance, which never overstates, until the far surface or the limit is reached.
        var way = new float[x.Length];
        foreach (var i in hidden)
        {
            way[i] = 0.01f;
        }

        var going = hidden.ToArray();
        var arrived = new List<int>();
        for (var step = 0; step < MostSteps && going.Length > 0; step++)
        {
            var d = Depths(going, way);
            var kept = 0;
            for (var k = 0; k < going.Length; k++)
            {
                var i = going[k];
                if (d[k] > -EndMm)
                {
                    arrived.Add(i);
                    continue;
                }

                way[i] -= d[k];
                if (way[i] < limit)
                {
                    going[kept++] = i;
                }
            }

            Array.Resize(ref going, kept);
        }

        // What the far side faces decides here too.
        var ends = arrived.ToArray();
        var n = ends.Length;
        float[] depth = new float[n], gx = new float[n], gy = new float[n], gz = new float[n];
        var (px, py, pz) = Inward(ends, way);
        field.Gradients(px, py, pz, depth, gx, gy, gz);
        for (var k = 0; k < n; k++)
        {
            var i = ends[k];
            if (gx[k] * nx[i] + gy[k] * ny[i] + gz[k] * nz[i] < opposed)
            {
                thickness[i] = way[i];
            }
        }
    }

    private float[] Depths(int[] at, float[] inward)
    {
        var (px, py, pz) = Inward(at, inward);
        var d = new float[at.Length];
        field.Distances(px, py, pz, d);
        return d;
    }

    /// <summary>The samples moved inwards along their normals, each by its own way.</summary>
    private (float[] X, float[] Y, float[] Z) Inward(int[] at, float[] way)
    {
        float[] px = new float[at.Length], py = new float[at.Length], pz = new float[at.Length];
        for (var k = 0; k < at.Length; k++)
        {
            var i = at[k];
            (px[k], py[k], pz[k]) = (x[i] - nx[i] * way[i], y[i] - ny[i] * way[i], z[i] - nz[i] * way[i]);
        }

        return (px, py, pz);
    }
}
