using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A convex body of many facets: the largest of the distances to their planes.</summary>
/// <remarks>Exact beside a facet, understated beside an edge or a corner. <see cref="Near"/> keeps the few planes that matter.</remarks>
internal sealed class Faceted : Solid
{
    private const float Slack = 1e-4f;
    private readonly (Vec3 Normal, double Offset)[] planes;
    private readonly float[] flat; // per plane: x y z offset
    private readonly bool isComplement;
    private readonly Bounds extent;

    private Faceted((Vec3 Normal, double Offset)[] planes, Bounds extent, bool isComplement)
        : base(isComplement ? Bounds.Everything : extent)
    {
        this.planes = planes;
        this.extent = extent;
        this.isComplement = isComplement;
        flat = new float[planes.Length * 4];
        for (var i = 0; i < planes.Length; i++)
        {
            var (n, d) = planes[i];
            (flat[i * 4], flat[i * 4 + 1], flat[i * 4 + 2], flat[i * 4 + 3]) = ((float)n.X, (float)n.Y, (float)n.Z, (float)d);
        }
    }

    public override int LeafCount => 1;

    public static Solid Of(ReadOnlySpan<(Vec3 Normal, double Offset)> planes, Bounds bounds)
    {
        if (planes.Length == 0)
        {
            throw new ArgumentException("a faceted body has at least one facet", nameof(planes));
        }

        return new Faceted(planes.ToArray(), bounds, false);
    }

    public override double Distance(Vec3 p) => Sense(p).Distance;

    public override (double Distance, Vec3 Gradient) Sense(Vec3 p)
    {
        var best = double.NegativeInfinity;
        var normal = Vec3.UnitZ;
        foreach (var (n, offset) in planes)
        {
            var d = n.Dot(p) - offset;
            if (d > best)
            {
                (best, normal) = (d, n);
            }
        }

        return isComplement ? (-best, -normal) : (best, normal);
    }

    public override float DistanceSingle(float x, float y, float z)
    {
        var best = float.NegativeInfinity;
        for (var i = 0; i < flat.Length; i += 4)
        {
            var d = x * flat[i] + y * flat[i + 1] + z * flat[i + 2] - flat[i + 3];
            best = best < d ? d : best;
        }

        return isComplement ? -best : best;
    }

    public override void Distances(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance, Arena arena)
    {
        if (Vector512.IsHardwareAccelerated)
        {
            Fill<Lanes16>(x, y, z, distance);
        }
        else if (Vector256.IsHardwareAccelerated)
        {
            Fill<Lanes8>(x, y, z, distance);
        }
        else
        {
            Fill<Lanes4>(x, y, z, distance);
        }
    }

    public override void Gradients(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz, Arena arena)
    {
        if (Vector512.IsHardwareAccelerated)
        {
            Fill<Lanes16>(x, y, z, distance, gx, gy, gz);
        }
        else if (Vector256.IsHardwareAccelerated)
        {
            Fill<Lanes8>(x, y, z, distance, gx, gy, gz);
        }
        else
        {
            Fill<Lanes4>(x, y, z, distance, gx, gy, gz);
        }
    }

    public override Solid Near(float x, float y, float z, float radius, out float distance)
    {
        var best = DistanceSingle(x, y, z);
        distance = best;
        var limit = (isComplement ? -best : best) - 2 * radius - Slack;
        var kept = new List<(Vec3 Normal, double Offset)>();
        for (var i = 0; i < planes.Length; i++)
        {
            if (x * flat[i * 4] + y * flat[i * 4 + 1] + z * flat[i * 4 + 2] - flat[i * 4 + 3] >= limit)
            {
                kept.Add(planes[i]);
            }
        }

        return kept.Count == planes.Length ? this : new Faceted([.. kept], extent, isComplement);
    }

    public override Solid Moved(Pose pose) => new Faceted(
        Array.ConvertAll(planes, plane =>
        {
            var normal = pose.Direction(plane.Normal);
            return (normal, plane.Offset + normal.Dot(pose.Origin));
        }),
        pose.Box(extent),
        isComplement);

    public override Solid Grown(double by)
    {
        // Moving every plane outwards keeps the corners sharp: the grown body holds the parallel body.
        var out1 = isComplement ? -by : by;
        return new Faceted(
            Array.ConvertAll(planes, plane => (plane.Normal, plane.Offset + out1)),
            extent.Grown(Math.Max(out1, 0) * CornerReach),
            isComplement);
    }

    public override Solid Complement() => new Faceted(planes, extent, !isComplement);

    // A corner of three planes at right angles moves by the square root of three; sharper corners are cut by the
    // other facets of a stone long before. Four covers a corner of 29 degrees.
    private const double CornerReach = 4;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fill<T>(ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance)
        where T : struct, IReal<T>
    {
        for (var i = 0; i < distance.Length; i += T.Width)
        {
            T px = T.Load(in x[i]), py = T.Load(in y[i]), pz = T.Load(in z[i]), best = T.C(float.NegativeInfinity);
            for (var k = 0; k < flat.Length; k += 4)
            {
                best = T.Max(best, px * T.C(flat[k]) + py * T.C(flat[k + 1]) + pz * T.C(flat[k + 2]) - T.C(flat[k + 3]));
            }

            T.Store(isComplement ? -best : best, ref distance[i]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fill<T>(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz)
        where T : struct, IReal<T>
    {
        for (var i = 0; i < distance.Length; i += T.Width)
        {
            T px = T.Load(in x[i]), py = T.Load(in y[i]), pz = T.Load(in z[i]);
            T best = T.C(float.NegativeInfinity), nx = T.C(0), ny = T.C(0), nz = T.C(0);
            for (var k = 0; k < flat.Length; k += 4)
            {
                T a = T.C(flat[k]), b = T.C(flat[k + 1]), c = T.C(flat[k + 2]);
                var d = px * a + py * b + pz * c - T.C(flat[k + 3]);
                nx = T.IfLess(best, d, a, nx);
                ny = T.IfLess(best, d, b, ny);
                nz = T.IfLess(best, d, c, nz);
                best = T.Max(best, d);
            }

            T.Store(isComplement ? -best : best, ref distance[i]);
            T.Store(isComplement ? -nx : nx, ref gx[i]);
            T.Store(isComplement ? -ny : ny, ref gy[i]);
            T.Store(isComplement ? -nz : nz, ref gz[i]);
        }
    }
}
