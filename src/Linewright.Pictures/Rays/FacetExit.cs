using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>Where a ray leaves a convex body from the inside, in vectors.</summary>
/// <remarks>
/// Not the least distance gap / slope is looked for but the greatest slope / gap: planes that the ray runs away from give
/// a negative number and drop out by themselves, parallel ones give zero. A point that rounding put on a plane or
/// behind it counts as a hair before it, which makes that plane the exit if the ray heads for it.
/// </remarks>
internal static unsafe class FacetExit
{
    /// <summary>Least gap, mm. Calculated: rounding of a point on the surface of a stone of 10 mm.</summary>
    private const float Hair = 1e-6f;

    /// <summary>One over a distance that no body is wide: where nothing nearer was found, the ray runs along all planes so far. 1/mm.</summary>
    private const float Farthest = 1e-6f;

    public static FacetHit Leave16(in FacetPlanes planes, in Float3 o, in Float3 d)
    {
        Vector512<float> dx = Vector512.Create(d.X), dy = Vector512.Create(d.Y), dz = Vector512.Create(d.Z);
        Vector512<float> ox = Vector512.Create(o.X), oy = Vector512.Create(o.Y), oz = Vector512.Create(o.Z);
        var best = Vector512<float>.Zero;
        var padded = planes.Padded;
        float* nx = planes.Numbers, ny = nx + padded, nz = ny + padded, offset = nz + padded;
        var index = (int*)(offset + padded);
        for (int i = 0, end = planes.Core; ; end = padded)
        {
            do
            {
                Vector512<float> x = Vector512.Load(nx + i), y = Vector512.Load(ny + i), z = Vector512.Load(nz + i);
                var slope = Vector512.FusedMultiplyAdd(x, dx, Vector512.FusedMultiplyAdd(y, dy, z * dz));
                var gap = FacetTracing.Less(FacetTracing.Less(FacetTracing.Less(Vector512.Load(offset + i), z, oz), y, oy), x, ox);
                var near = slope * FacetTracing.Inverse(Vector512.MaxNative(gap, Vector512.Create(Hair)));
                best = Vector512.MaxNative(best, Vector512.BitwiseOr(near.AsInt32() & Vector512.Create(~FacetTracing.IndexBits), Vector512.Load(index + i)).AsSingle());
                i += 16;
            }
            while (i < end);
            var nearest = FacetTracing.Greatest(Vector256.MaxNative(best.GetLower(), best.GetUpper()));
            var hit = Exact(planes, o, d, nearest);
            if (i >= padded || (nearest > Farthest && planes.IsWithin(o + d * hit.Distance)))
            {
                return hit;
            }
        }
    }

    public static FacetHit Leave8(in FacetPlanes planes, in Float3 o, in Float3 d)
    {
        Vector256<float> dx = Vector256.Create(d.X), dy = Vector256.Create(d.Y), dz = Vector256.Create(d.Z);
        Vector256<float> ox = Vector256.Create(o.X), oy = Vector256.Create(o.Y), oz = Vector256.Create(o.Z);
        var best = Vector256<float>.Zero;
        var padded = planes.Padded;
        float* nx = planes.Numbers, ny = nx + padded, nz = ny + padded, offset = nz + padded;
        var index = (int*)(offset + padded);
        for (int i = 0, end = planes.Core; ; end = padded)
        {
            do
            {
                Vector256<float> x = Vector256.Load(nx + i), y = Vector256.Load(ny + i), z = Vector256.Load(nz + i);
                var slope = Vector256.FusedMultiplyAdd(x, dx, Vector256.FusedMultiplyAdd(y, dy, z * dz));
                var gap = FacetTracing.Less(FacetTracing.Less(FacetTracing.Less(Vector256.Load(offset + i), z, oz), y, oy), x, ox);
                var near = slope * FacetTracing.Inverse(Vector256.MaxNative(gap, Vector256.Create(Hair)));
                best = Vector256.MaxNative(best, Vector256.BitwiseOr(near.AsInt32() & Vector256.Create(~FacetTracing.IndexBits), Vector256.Load(index + i)).AsSingle());
                i += 8;
            }
            while (i < end);
            var nearest = FacetTracing.Greatest(best);
            var hit = Exact(planes, o, d, nearest);
            if (i >= padded || (nearest > Farthest && planes.IsWithin(o + d * hit.Distance)))
            {
                return hit;
            }
        }
    }

    /// <summary>Distance of the facet whose number is hidden in an estimate.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static FacetHit Exact(in FacetPlanes planes, in Float3 o, in Float3 d, float estimate)
    {
        var facet = Math.Min(BitConverter.SingleToInt32Bits(estimate) & FacetTracing.IndexBits, planes.Padded - 1);
        var n = planes.Numbers + facet;
        float x = n[0], y = n[planes.Padded], z = n[2 * planes.Padded];
        var gap = n[3 * planes.Padded] - MathF.FusedMultiplyAdd(x, o.X, MathF.FusedMultiplyAdd(y, o.Y, z * o.Z));
        return new FacetHit { Facet = facet, Distance = gap / MathF.FusedMultiplyAdd(x, d.X, MathF.FusedMultiplyAdd(y, d.Y, z * d.Z)) };
    }
}
