using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Linewright.Pictures.Rays;

/// <summary>Rays against all planes of a convex body at once, 16 or 8 a step; plain arithmetic where there is no vector unit.</summary>
/// <remarks>
/// Inside, the nearest plane that the ray runs towards is the exit: no edge can be missed and no epsilon is needed. A
/// distance that rounding made negative is clamped to zero by the caller; the plane just left is not met again, because
/// the ray runs away from it. The vector forms are <see cref="FacetExit"/> and <see cref="FacetEntry"/>; what is here says the
/// same in the plainest way.
/// </remarks>
internal static unsafe class FacetTracing
{
    internal const float Far = 1e30f;

    /// <summary>
    /// The lowest bits of a number that is compared carry the facet's number: one vector then does the
    /// work of two, and the chain from step to step is a single comparison. Two facets within 3e-5 of the same distance may
    /// change places: the last tenth of a micrometre at an edge.
    /// </summary>
    internal const int IndexBits = 0xFF;

    /// <summary>Slope below which a ray counts as parallel to a plane.</summary>
    private const float Parallel = 1e-7f;

    /// <summary>Exit of a ray from the inside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FacetHit Leave(in FacetPlanes planes, Float3 o, Float3 d)
        => planes.Padded > IndexBits + 1 ? LeavePlain(planes, o, d)
            : Vector512.IsHardwareAccelerated ? FacetExit.Leave16(planes, o, d)
            : Vector256.IsHardwareAccelerated ? FacetExit.Leave8(planes, o, d)
            : LeavePlain(planes, o, d);

    /// <summary>Entry of a ray from the outside; facet -1 where it passes by or starts inside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FacetHit Enter(in FacetPlanes planes, Float3 o, Float3 d)
        => planes.Padded > IndexBits + 1 ? EnterPlain(planes, o, d)
            : Vector512.IsHardwareAccelerated ? FacetEntry.Enter16(planes, o, d)
            : Vector256.IsHardwareAccelerated ? FacetEntry.Enter8(planes, o, d)
            : EnterPlain(planes, o, d);

    internal static FacetHit LeavePlain(in FacetPlanes planes, Float3 o, Float3 d)
    {
        var hit = new FacetHit { Distance = Far, Facet = 0 };
        for (var i = 0; i < planes.Padded; i++)
        {
            var slope = Float3.Dot(planes.Normal(i), d);
            var t = planes.Gap(i, o) / slope;
            if (slope > Parallel && t < hit.Distance)
            {
                hit.Distance = t;
                hit.Facet = i;
            }
        }

        return hit;
    }

    internal static FacetHit EnterPlain(in FacetPlanes planes, Float3 o, Float3 d)
    {
        var hit = new FacetHit { Distance = -Far, Facet = -1 };
        var leave = Far;
        for (var i = 0; i < planes.Padded; i++)
        {
            // Adding to zero turns a slope of minus zero into zero: what is parallel and inside must not look left behind.
            var slope = Float3.Dot(planes.Normal(i), d) + 0f;
            var t = planes.Gap(i, o) / slope;
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

    /// <summary>The largest of eight.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static float Greatest(Vector256<float> v)
    {
        var m = Vector128.MaxNative(v.GetLower(), v.GetUpper());
        m = Vector128.MaxNative(m, Vector128.Shuffle(m, Vector128.Create(2, 3, 0, 1)));
        m = Vector128.MaxNative(m, Vector128.Shuffle(m, Vector128.Create(1, 0, 3, 2)));
        return m.ToScalar();
    }

    /// <summary>One over a number: the processor's estimate and one step of Newton's. Dividing takes as long as all the rest together.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector512<float> Inverse(Vector512<float> v)
    {
        if (!Avx512F.IsSupported)
        {
            return Vector512<float>.One / v;
        }

        var estimate = Avx512F.Reciprocal14(v);
        return estimate * Less(Vector512.Create(2f), v, estimate);
    }

    /// <summary>The same for eight.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector256<float> Inverse(Vector256<float> v)
    {
        if (!Avx.IsSupported)
        {
            return Vector256<float>.One / v;
        }

        var estimate = Avx.Reciprocal(v);
        return estimate * Less(Vector256.Create(2f), v, estimate);
    }

    /// <summary>a - b c.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector512<float> Less(Vector512<float> a, Vector512<float> b, Vector512<float> c)
        => Avx512F.IsSupported ? Avx512F.FusedMultiplyAddNegated(b, c, a) : a - b * c;

    /// <summary>The same for eight.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector256<float> Less(Vector256<float> a, Vector256<float> b, Vector256<float> c)
        => Fma.IsSupported ? Fma.MultiplyAddNegated(b, c, a) : a - b * c;
}
