using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A box about the origin with all edges and corners rounded (0 is sharp). Exact distance.</summary>
internal readonly struct RoundedBox(double halfX, double halfY, double halfZ, double edge) : IShape
{
    public Bounds Bounds => Bounds.Around(halfX, halfY, halfZ);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
    {
        var zero = T.C(0);
        T a = T.Abs(x) - T.C(halfX - edge), b = T.Abs(y) - T.C(halfY - edge), c = T.Abs(z) - T.C(halfZ - edge);
        T p = T.Max(a, zero), q = T.Max(b, zero), r = T.Max(c, zero);
        T most = T.Max(a, T.Max(b, c)), mixed = p * q + q * r + r * p;

        // Beside a face, inside or out, the largest difference is the distance, and its gradient is the face's normal.
        return T.IfLess(zero, mixed, T.Sqrt(p * p + q * q + r * r), most) - T.C(edge);
    }
}
