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
    /// <summary>One over a direction's coordinate.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Over(float d) => 1f / (MathF.Abs(d) < 1e-18f ? MathF.CopySign(1e-18f, d) : d);

    /// <summary>Byte offset in a node of the bounds that the ray meets first along an axis; the others lie 32 bytes over or under them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Near(float over, int axis) => 64 * axis + (over < 0 ? 32 : 0);

    /// <summary>One bit for each box that is met between 0 and <paramref name="far"/>, and where each is entered.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Meet(
        byte* node, int nearX, int nearY, int nearZ,
        Vector256<float> overX, Vector256<float> overY, Vector256<float> overZ,
        Vector256<float> shiftX, Vector256<float> shiftY, Vector256<float> shiftZ,
        float far, out Vector256<float> entry)
    {
        var x0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + nearX)), overX, shiftX);
        var y0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + nearY)), overY, shiftY);
        var z0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + nearZ)), overZ, shiftZ);
        var x1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + (nearX ^ 32))), overX, shiftX);
        var y1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + (nearY ^ 32))), overY, shiftY);
        var z1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(node + (nearZ ^ 32))), overZ, shiftZ);
        entry = Vector256.MaxNative(Vector256.MaxNative(x0, y0), Vector256.MaxNative(z0, Vector256<float>.Zero));
        var exit = Vector256.MinNative(Vector256.MinNative(x1, y1), Vector256.MinNative(z1, Vector256.Create(far)));
        return Vector256.LessThanOrEqual(entry, exit).ExtractMostSignificantBits();
    }
}
