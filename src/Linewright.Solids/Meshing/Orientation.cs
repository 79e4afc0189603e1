using System.Numerics;
using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>On which side of a plane or line a point lies, decided exactly for single-precision coordinates.</summary>
/// <remarks>
/// Double arithmetic answers nearly always: its rounding is bounded by a small part of the sum of the terms' sizes.
/// Where the result falls within that bound, the same determinant is worked out in whole numbers.
/// Source of the bounds: J. R. Shewchuk (1997), Adaptive precision floating-point arithmetic, Discrete Comput. Geom. 18.
/// </remarks>
internal static class Orientation
{
    private const double Unit = 1.1102230246251565e-16; // 2^-53
    private const double Bound3 = (7 + 56 * Unit) * Unit;
    private const double Bound2 = (3 + 16 * Unit) * Unit;

    /// <summary>1 where d lies on the side of plane a b c from which the three run clockwise, -1 on the other, 0 on it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static int Side(in Vector3 a, in Vector3 b, in Vector3 c, in Vector3 d)
    {
        double ax = (double)a.X - d.X, ay = (double)a.Y - d.Y, az = (double)a.Z - d.Z;
        double bx = (double)b.X - d.X, by = (double)b.Y - d.Y, bz = (double)b.Z - d.Z;
        double cx = (double)c.X - d.X, cy = (double)c.Y - d.Y, cz = (double)c.Z - d.Z;
        double bxcy = bx * cy, cxby = cx * by, cxay = cx * ay, axcy = ax * cy, axby = ax * by, bxay = bx * ay;
        var det = az * (bxcy - cxby) + bz * (cxay - axcy) + cz * (axby - bxay);
        var size = (Math.Abs(bxcy) + Math.Abs(cxby)) * Math.Abs(az)
            + (Math.Abs(cxay) + Math.Abs(axcy)) * Math.Abs(bz)
            + (Math.Abs(axby) + Math.Abs(bxay)) * Math.Abs(cz);
        var bound = Bound3 * size;
        return det > bound ? 1 : det < -bound ? -1 : size == 0 ? 0 : ExactSide(a, b, c, d);
    }

    /// <summary>1 where a, b, c run counter-clockwise in the plane of two coordinates, -1 clockwise, 0 on one line.</summary>
    public static int Turn(double ax, double ay, double bx, double by, double cx, double cy)
    {
        double left = (ax - cx) * (by - cy), right = (ay - cy) * (bx - cx), det = left - right;
        var size = Math.Abs(left) + Math.Abs(right);
        var bound = Bound2 * size;
        return det > bound ? 1 : det < -bound ? -1 : size == 0 ? 0 : ExactTurn(ax, ay, bx, by, cx, cy);
    }

    private static int ExactSide(Vector3 a, Vector3 b, Vector3 c, Vector3 d)
    {
        BigInteger dx = Whole(d.X), dy = Whole(d.Y), dz = Whole(d.Z);
        BigInteger ax = Whole(a.X) - dx, ay = Whole(a.Y) - dy, az = Whole(a.Z) - dz;
        BigInteger bx = Whole(b.X) - dx, by = Whole(b.Y) - dy, bz = Whole(b.Z) - dz;
        BigInteger cx = Whole(c.X) - dx, cy = Whole(c.Y) - dy, cz = Whole(c.Z) - dz;
        return (az * (bx * cy - cx * by) + bz * (cx * ay - ax * cy) + cz * (ax * by - bx * ay)).Sign;
    }

    private static int ExactTurn(double ax, double ay, double bx, double by, double cx, double cy)
    {
        BigInteger x = Whole((float)cx), y = Whole((float)cy);
        return ((Whole((float)ax) - x) * (Whole((float)by) - y) - (Whole((float)ay) - y) * (Whole((float)bx) - x)).Sign;
    }

    /// <summary>The number times 2^149: every finite float is then whole.</summary>
    private static BigInteger Whole(float value)
    {
        var bits = BitConverter.SingleToUInt32Bits(value);
        int exponent = (int)((bits >> 23) & 0xff), mantissa = (int)(bits & 0x7fffff);
        var whole = exponent == 0 ? mantissa : (BigInteger)(mantissa | 0x800000) << (exponent - 1);
        return (bits >> 31) == 0 ? whole : -whole;
    }
}
