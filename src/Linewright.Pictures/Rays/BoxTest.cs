using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>A ray against eight boxes at once.</summary>
/// <remarks>
/// The ray comes as six vectors in the caller's own variables: kept together in a struct they would live in memory, which
/// costs a sixth of the speed. A direction without extent along an axis counts as 1e-18 there: its slab is then everything
/// or nothing. Source: Wald et al. (2008), Getting rid of packets; slabs: Kay and Kajiya (1986).
/// </remarks>
internal static unsafe class BoxTest
{
    /// <summary>One over each coordinate of a direction.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<float> Over(Vector128<float> d)
    {
        var small = Vector128.LessThan(Vector128.Abs(d), Vector128.Create(1e-18f));
        return Vector128<float>.One / Vector128.ConditionalSelect(small, Vector128.CopySign(Vector128.Create(1e-18f), d), d);
    }

    /// <summary>Byte offsets in a node of the bounds that the ray meets first; the others lie 32 bytes over or under them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (nint X, nint Y, nint Z) Near(Vector128<float> over)
    {
        var signs = (nint)over.ExtractMostSignificantBits();
        return ((signs & 1) << 5, 64 + ((signs & 2) << 4), 128 + ((signs & 4) << 3));
    }

    /// <summary>One bit for each box that is met between 0 and <paramref name="far"/>, and where each is entered.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Meet(
        byte* node, nint nearX, nint nearY, nint nearZ, nint farX, nint farY, nint farZ,
        Vector256<float> overX, Vector256<float> overY, Vector256<float> overZ,
        Vector256<float> shiftX, Vector256<float> shiftY, Vector256<float> shiftZ,
        float far, out Vector256<float> entry)
    {
        var x0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + nearX)), overX, shiftX);
        var y0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + nearY)), overY, shiftY);
        var z0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + nearZ)), overZ, shiftZ);
        var x1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + farX)), overX, shiftX);
        var y1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + farY)), overY, shiftY);
        var z1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + farZ)), overZ, shiftZ);
        entry = Vector256.MaxNative(Vector256.MaxNative(x0, y0), Vector256.MaxNative(z0, Vector256<float>.Zero));
        var exit = Vector256.MinNative(Vector256.MinNative(x1, y1), Vector256.MinNative(z1, Vector256.Create(far)));
        return Vector256.LessThanOrEqual(entry, exit).ExtractMostSignificantBits();
    }
}
