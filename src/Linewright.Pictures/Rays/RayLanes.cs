using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>A ray made ready to be tested against eight boxes at once.</summary>
/// <remarks>
/// A direction without extent along an axis counts as 1e-18 there: its slab is then either everything or nothing.
/// Source: Wald et al. (2008), Getting rid of packets; slabs: Kay and Kajiya (1986).
/// </remarks>
internal readonly unsafe struct RayLanes
{
    private readonly Vector256<float> overX;
    private readonly Vector256<float> overY;
    private readonly Vector256<float> overZ;
    private readonly Vector256<float> shiftX;
    private readonly Vector256<float> shiftY;
    private readonly Vector256<float> shiftZ;
    private readonly int nearX;
    private readonly int nearY;
    private readonly int nearZ;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public RayLanes(Float3 o, Float3 d)
    {
        float x = Over(d.X), y = Over(d.Y), z = Over(d.Z);
        overX = Vector256.Create(x);
        overY = Vector256.Create(y);
        overZ = Vector256.Create(z);
        shiftX = Vector256.Create(-o.X * x);
        shiftY = Vector256.Create(-o.Y * y);
        shiftZ = Vector256.Create(-o.Z * z);

        // Byte offsets of the bounds that the ray meets first; the others lie 32 bytes over or under them.
        nearX = x < 0 ? 32 : 0;
        nearY = y < 0 ? 96 : 64;
        nearZ = z < 0 ? 160 : 128;
    }

    /// <summary>One bit for each box that is met between 0 and <paramref name="far"/>; where each is entered.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public uint Test(TreeNode* node, float far, out Vector256<float> entry)
    {
        var n = (byte*)node;
        var x0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(n + nearX)), overX, shiftX);
        var y0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(n + nearY)), overY, shiftY);
        var z0 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(n + nearZ)), overZ, shiftZ);
        var x1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(n + (nearX ^ 32))), overX, shiftX);
        var y1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(n + (nearY ^ 32))), overY, shiftY);
        var z1 = Vector256.FusedMultiplyAdd(Vector256.LoadAligned((float*)(n + (nearZ ^ 32))), overZ, shiftZ);
        entry = Vector256.MaxNative(Vector256.MaxNative(x0, y0), Vector256.MaxNative(z0, Vector256<float>.Zero));
        var exit = Vector256.MinNative(Vector256.MinNative(x1, y1), Vector256.MinNative(z1, Vector256.Create(far)));
        return Vector256.LessThanOrEqual(entry, exit).ExtractMostSignificantBits();
    }

    private static float Over(float d) => 1f / (MathF.Abs(d) < 1e-18f ? MathF.CopySign(1e-18f, d) : d);
}
