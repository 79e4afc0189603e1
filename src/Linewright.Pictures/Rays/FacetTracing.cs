using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Linewright.Pictures.Rays;

/// <summary>Rays against all planes of a convex body at once, 16 or 8 a step; plain arithmetic where there is no vector unit.</summary>
/// <remarks>
/// Inside, the nearest plane that the ray runs towards is the exit: no edge can be missed and no epsilon is needed. A
/// distance that rounding made negative is clamped to zero by the caller; the plane just left is not met again, because
/// the ray runs away from it. Nearly parallel planes are left out; they are never the exit of a closed body. From outside
/// they need no care: dividing by a slope near zero sends the crossing far away, on the side that decides rightly.
/// </remarks>
internal static unsafe class FacetTracing
{
    /// <summary>Slope below which a ray counts as parallel to a plane.</summary>
    private const float Parallel = 1e-7f;

    private const float Far = 1e30f;

    /// <summary>
    /// The lowest bits of a distance, which carry the facet's number while the least is looked for: one vector then does the
    /// work of two, and the chain from step to step is a single comparison. Two facets within 3e-5 of the same distance may
    /// change places: the last tenth of a micrometre at an edge.
    /// </summary>
    private const int IndexBits = 0xFF;

    /// <summary>Exit of a ray from the inside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FacetHit Leave(float* planes, int padded, Float3 o, Float3 d)
        => padded > IndexBits + 1 ? LeavePlain(planes, padded, o, d)
            : Vector512.IsHardwareAccelerated ? Leave16(planes, padded, o, d)
            : Vector256.IsHardwareAccelerated ? Leave8(planes, padded, o, d)
            : LeavePlain(planes, padded, o, d);

    /// <summary>Entry of a ray from the outside; facet -1 where it passes by or starts inside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FacetHit Enter(float* planes, int padded, Float3 o, Float3 d)
        => Vector256.IsHardwareAccelerated ? Enter8(planes, padded, o, d) : EnterPlain(planes, padded, o, d);

    internal static FacetHit Leave16(float* planes, int padded, Float3 o, Float3 d)
    {
        Vector512<float> dx = Vector512.Create(d.X), dy = Vector512.Create(d.Y), dz = Vector512.Create(d.Z);
        Vector512<float> ox = Vector512.Create(o.X), oy = Vector512.Create(o.Y), oz = Vector512.Create(o.Z);
        var best = Vector512.Create(Far);
        var index = Vector512<int>.Indices;
        float* ny = planes + padded, nz = ny + padded, offset = nz + padded;
        for (var i = 0; i < padded; i += 16)
        {
            Vector512<float> x = Vector512.Load(planes + i), y = Vector512.Load(ny + i), z = Vector512.Load(nz + i);
            var slope = Vector512.FusedMultiplyAdd(x, dx, Vector512.FusedMultiplyAdd(y, dy, z * dz));
            var gap = Vector512.Load(offset + i) - Vector512.FusedMultiplyAdd(x, ox, Vector512.FusedMultiplyAdd(y, oy, z * oz));
            var t = Vector512.BitwiseOr((gap * Inverse(slope)).AsInt32() & Vector512.Create(~IndexBits), index).AsSingle();
            best = Vector512.MinNative(best, Vector512.ConditionalSelect(Vector512.GreaterThan(slope, Vector512.Create(Parallel)), t, Vector512.Create(Far)));
            index += Vector512.Create(16);
        }

        return Exact(planes, padded, o, d, Least(Vector256.MinNative(best.GetLower(), best.GetUpper())));
    }

    internal static FacetHit Leave8(float* planes, int padded, Float3 o, Float3 d)
    {
        Vector256<float> dx = Vector256.Create(d.X), dy = Vector256.Create(d.Y), dz = Vector256.Create(d.Z);
        Vector256<float> ox = Vector256.Create(o.X), oy = Vector256.Create(o.Y), oz = Vector256.Create(o.Z);
        var best = Vector256.Create(Far);
        var index = Vector256<int>.Indices;
        float* ny = planes + padded, nz = ny + padded, offset = nz + padded;
        for (var i = 0; i < padded; i += 8)
        {
            Vector256<float> x = Vector256.Load(planes + i), y = Vector256.Load(ny + i), z = Vector256.Load(nz + i);
            var slope = Vector256.FusedMultiplyAdd(x, dx, Vector256.FusedMultiplyAdd(y, dy, z * dz));
            var gap = Vector256.Load(offset + i) - Vector256.FusedMultiplyAdd(x, ox, Vector256.FusedMultiplyAdd(y, oy, z * oz));
            var t = Vector256.BitwiseOr((gap * Inverse(slope)).AsInt32() & Vector256.Create(~IndexBits), index).AsSingle();
            best = Vector256.MinNative(best, Vector256.ConditionalSelect(Vector256.GreaterThan(slope, Vector256.Create(Parallel)), t, Vector256.Create(Far)));
            index += Vector256.Create(8);
        }

        return Exact(planes, padded, o, d, Least(best));
    }

    /// <summary>Distance of the facet whose number is hidden in an estimate.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static FacetHit Exact(float* planes, int padded, Float3 o, Float3 d, float estimate)
    {
        var facet = Math.Min(BitConverter.SingleToInt32Bits(estimate) & IndexBits, padded - 1);
        var plane = planes + facet;
        float x = plane[0], y = plane[padded], z = plane[2 * padded];
        return new FacetHit
        {
            Facet = facet,
            Distance = (plane[3 * padded] - (x * o.X + y * o.Y + z * o.Z)) / (x * d.X + y * d.Y + z * d.Z),
        };
    }

    internal static FacetHit LeavePlain(float* planes, int padded, Float3 o, Float3 d)
    {
        var hit = new FacetHit { Distance = Far, Facet = 0 };
        for (var i = 0; i < padded; i++)
        {
            float nx = planes[i], ny = planes[padded + i], nz = planes[2 * padded + i];
            var slope = nx * d.X + ny * d.Y + nz * d.Z;
            var t = (planes[3 * padded + i] - (nx * o.X + ny * o.Y + nz * o.Z)) / slope;
            if (slope > Parallel && t < hit.Distance)
            {
                hit.Distance = t;
                hit.Facet = i;
            }
        }

        return hit;
    }

    [SkipLocalsInit]
    internal static FacetHit Enter8(float* planes, int padded, Float3 o, Float3 d)
    {
        Vector256<float> dx = Vector256.Create(d.X), dy = Vector256.Create(d.Y), dz = Vector256.Create(d.Z);
        Vector256<float> ox = Vector256.Create(o.X), oy = Vector256.Create(o.Y), oz = Vector256.Create(o.Z);
        Vector256<float> enter = Vector256.Create(-Far), leave = Vector256.Create(Far);
        var which = Vector256<int>.Zero;
        var index = Vector256.Create(0, 1, 2, 3, 4, 5, 6, 7);
        for (var i = 0; i < padded; i += 8)
        {
            Vector256<float> nx = Vector256.Load(planes + i), ny = Vector256.Load(planes + padded + i), nz = Vector256.Load(planes + 2 * padded + i);

            // Adding to zero turns a slope of minus zero into zero: what is parallel and inside must not look left behind.
            var slope = Vector256.FusedMultiplyAdd(nx, dx, Vector256.FusedMultiplyAdd(ny, dy, Vector256.FusedMultiplyAdd(nz, dz, Vector256<float>.Zero)));
            var gap = Vector256.Load(planes + 3 * padded + i) - Vector256.FusedMultiplyAdd(nx, ox, Vector256.FusedMultiplyAdd(ny, oy, nz * oz));
            var t = gap / slope;
            var later = Vector256.LessThan(slope, Vector256<float>.Zero) & Vector256.GreaterThan(t, enter);
            enter = Vector256.ConditionalSelect(later, t, enter);
            which = Vector256.ConditionalSelect(later.AsInt32(), index, which);
            leave = Vector256.ConditionalSelect(Vector256.LessThan(slope, Vector256<float>.Zero), leave, Vector256.MinNative(t, leave));
            index += Vector256.Create(8);
        }

        var first = Greatest(enter);
        if (first <= 0 || first >= Least(leave))
        {
            return new FacetHit { Distance = first, Facet = -1 };
        }

        var lane = BitOperations.TrailingZeroCount(Vector256.Equals(enter, Vector256.Create(first)).ExtractMostSignificantBits());
        var facets = stackalloc int[8];
        which.Store(facets);
        return new FacetHit { Distance = first, Facet = facets[lane & 7] };
    }

    internal static FacetHit EnterPlain(float* planes, int padded, Float3 o, Float3 d)
    {
        var hit = new FacetHit { Distance = -Far, Facet = -1 };
        var leave = Far;
        for (var i = 0; i < padded; i++)
        {
            float nx = planes[i], ny = planes[padded + i], nz = planes[2 * padded + i];
            var slope = nx * d.X + ny * d.Y + nz * d.Z + 0f;
            var t = (planes[3 * padded + i] - (nx * o.X + ny * o.Y + nz * o.Z)) / slope;
            if (slope < 0)
            {
                if (t > hit.Distance)
                {
                    hit.Distance = t;
                    hit.Facet = i;
                }
            }
            else if (t < leave)
            {
                leave = t;
            }
        }

        if (hit.Distance <= 0 || hit.Distance >= leave)
        {
            hit.Facet = -1;
        }

        return hit;
    }

    /// <summary>One over a number: the processor's estimate and one step of Newton's. Dividing takes as long as all the rest together.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> Inverse(Vector512<float> v)
    {
        if (!Avx512F.IsSupported)
        {
            return Vector512<float>.One / v;
        }

        var estimate = Avx512F.Reciprocal14(v);
        return estimate * Vector512.FusedMultiplyAdd(-v, estimate, Vector512.Create(2f));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Inverse(Vector256<float> v)
    {
        if (!Avx.IsSupported)
        {
            return Vector256<float>.One / v;
        }

        var estimate = Avx.Reciprocal(v);
        return estimate * Vector256.FusedMultiplyAdd(-v, estimate, Vector256.Create(2f));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Least(Vector256<float> v)
    {
        var m = Vector128.MinNative(v.GetLower(), v.GetUpper());
        m = Vector128.MinNative(m, Vector128.Shuffle(m, Vector128.Create(2, 3, 0, 1)));
        m = Vector128.MinNative(m, Vector128.Shuffle(m, Vector128.Create(1, 0, 3, 2)));
        return m.ToScalar();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Greatest(Vector256<float> v)
    {
        var m = Vector128.MaxNative(v.GetLower(), v.GetUpper());
        m = Vector128.MaxNative(m, Vector128.Shuffle(m, Vector128.Create(2, 3, 0, 1)));
        m = Vector128.MaxNative(m, Vector128.Shuffle(m, Vector128.Create(1, 0, 3, 2)));
        return m.ToScalar();
    }
}
