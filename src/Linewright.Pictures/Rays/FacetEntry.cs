using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>Where a ray enters a convex body from the outside, in vectors.</summary>
/// <remarks>
/// The ray is first moved up to the sphere about the body, so that the estimates are good to 3e-5 of the body's size and not of
/// the way to it. A slope near zero is held away from it with its sign: the crossing then lies far off, on the side that
/// decides rightly.
/// </remarks>
internal static unsafe class FacetEntry
{
    /// <summary>Least slope.</summary>
    private const float Flat = 1e-12f;

    public static FacetHit Enter16(in FacetPlanes planes, Float3 o, Float3 d)
    {
        var ahead = Ahead(planes, o, d);
        var from = o + d * ahead;
        Vector512<float> dx = Vector512.Create(d.X), dy = Vector512.Create(d.Y), dz = Vector512.Create(d.Z);
        Vector512<float> ox = Vector512.Create(from.X), oy = Vector512.Create(from.Y), oz = Vector512.Create(from.Z);
        Vector512<float> enter = Vector512.Create(-FacetTracing.Far), away = Vector512.Create(-FacetTracing.Far);
        var padded = planes.Padded;
        float* nx = planes.Numbers, ny = nx + padded, nz = ny + padded, offset = nz + padded;
        var index = (int*)(offset + padded);
        for (int i = 0, end = planes.Core; ; end = padded)
        {
            do
            {
                Vector512<float> x = Vector512.Load(nx + i), y = Vector512.Load(ny + i), z = Vector512.Load(nz + i);
                var slope = Vector512.FusedMultiplyAdd(x, dx, Vector512.FusedMultiplyAdd(y, dy, z * dz));
                var beyond = Vector512.FusedMultiplyAdd(x, ox, Vector512.FusedMultiplyAdd(y, oy, z * oz)) - Vector512.Load(offset + i);
                var towards = Vector512.LessThan(slope, Vector512<float>.Zero);
                var held = Vector512.MaxNative(Vector512.Abs(slope), Vector512.Create(Flat));

                // For planes ahead the way to them; for those on the far side its negative: the least way out is the greatest of them.
                var t = beyond * FacetTracing.Inverse(held);
                var marked = Vector512.BitwiseOr(t.AsInt32() & Vector512.Create(~FacetTracing.IndexBits), Vector512.Load(index + i)).AsSingle();
                enter = Vector512.ConditionalSelect(towards, Vector512.MaxNative(enter, marked), enter);
                away = Vector512.ConditionalSelect(towards, away, Vector512.MaxNative(away, t));
                i += 16;
            }
            while (i < end);
            var last = i >= padded;
            var hit = Decide(
                planes, o, d, from, ahead, FacetTracing.Greatest(Vector256.MaxNative(enter.GetLower(), enter.GetUpper())),
                -FacetTracing.Greatest(Vector256.MaxNative(away.GetLower(), away.GetUpper())), ref last);
            if (last)
            {
                return hit;
            }
        }
    }

    public static FacetHit Enter8(in FacetPlanes planes, Float3 o, Float3 d)
    {
        var ahead = Ahead(planes, o, d);
        var from = o + d * ahead;
        Vector256<float> dx = Vector256.Create(d.X), dy = Vector256.Create(d.Y), dz = Vector256.Create(d.Z);
        Vector256<float> ox = Vector256.Create(from.X), oy = Vector256.Create(from.Y), oz = Vector256.Create(from.Z);
        Vector256<float> enter = Vector256.Create(-FacetTracing.Far), away = Vector256.Create(-FacetTracing.Far);
        var padded = planes.Padded;
        float* nx = planes.Numbers, ny = nx + padded, nz = ny + padded, offset = nz + padded;
        var index = (int*)(offset + padded);
        for (int i = 0, end = planes.Core; ; end = padded)
        {
            do
            {
                Vector256<float> x = Vector256.Load(nx + i), y = Vector256.Load(ny + i), z = Vector256.Load(nz + i);
                var slope = Vector256.FusedMultiplyAdd(x, dx, Vector256.FusedMultiplyAdd(y, dy, z * dz));
                var beyond = Vector256.FusedMultiplyAdd(x, ox, Vector256.FusedMultiplyAdd(y, oy, z * oz)) - Vector256.Load(offset + i);
                var towards = Vector256.LessThan(slope, Vector256<float>.Zero);
                var held = Vector256.MaxNative(Vector256.Abs(slope), Vector256.Create(Flat));
                var t = beyond * FacetTracing.Inverse(held);
                var marked = Vector256.BitwiseOr(t.AsInt32() & Vector256.Create(~FacetTracing.IndexBits), Vector256.Load(index + i)).AsSingle();
                enter = Vector256.ConditionalSelect(towards, Vector256.MaxNative(enter, marked), enter);
                away = Vector256.ConditionalSelect(towards, away, Vector256.MaxNative(away, t));
                i += 8;
            }
            while (i < end);
            var last = i >= padded;
            var hit = Decide(planes, o, d, from, ahead, FacetTracing.Greatest(enter), -FacetTracing.Greatest(away), ref last);
            if (last)
            {
                return hit;
            }
        }
    }

    /// <summary>How far the ray may be moved on before it comes near the body, mm.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Ahead(in FacetPlanes planes, Float3 o, Float3 d) => MathF.Max(0f, -Float3.Dot(o, d) - planes.Radius);

    /// <summary>The hit as far as the planes so far tell; sets <paramref name="last"/> where no more of them can change it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static FacetHit Decide(in FacetPlanes planes, Float3 o, Float3 d, Float3 from, float ahead, float enter, float leave, ref bool last)
    {
        var facet = Math.Min(BitConverter.SingleToInt32Bits(enter) & FacetTracing.IndexBits, planes.Padded - 1);
        var t = planes.Gap(facet, from) / Float3.Dot(planes.Normal(facet), d);
        var distance = ahead + t;
        if (distance <= 0 || ahead + enter < -planes.Radius || enter >= leave)
        {
            // More planes make the way in later and the way out earlier; only a start inside may turn out to be one outside.
            last |= enter >= leave;
            return new FacetHit { Distance = distance, Facet = -1 };
        }

        last |= planes.IsWithin(from + d * t);
        return new FacetHit { Distance = distance, Facet = facet };
    }
}
