using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>An outline in the x-y plane pulled up and down by half a height, its rims rounded. Exact where the outline is.</summary>
internal readonly struct Extrusion<TOutline>(TOutline outline, double halfHeight, double edge) : IShape
    where TOutline : struct, IOutline
{
    public Bounds Bounds
    {
        get
        {
            var (lowU, highU, lowV, highV) = outline.Reach;
            return new Bounds(new Vec3(lowU, lowV, -halfHeight), new Vec3(highU, highV, halfHeight));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
    {
        var zero = T.C(0);
        T a = outline.Distance(x, y) + T.C(edge), b = T.Abs(z) - T.C(halfHeight - edge);
        T p = T.Max(a, zero), q = T.Max(b, zero);
        return T.IfLess(zero, p * q, T.Sqrt(p * p + q * q), T.Max(a, b)) - T.C(edge);
    }
}
