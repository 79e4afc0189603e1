using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>
/// A bent round wire about the z axis, symmetric about the x axis, with ball ends: the arc runs from minus to plus
/// half its angle. Exact distance.
/// </summary>
internal readonly struct TorusArc(double ring, double wire, double halfAngle) : IShape
{
    private readonly double sin = Math.Sin(halfAngle), cos = Math.Cos(halfAngle);

    public Bounds Bounds => Bounds.Around(ring + wire, ring + wire, wire);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
    {
        // By symmetry only the end at positive y counts; past it the nearest point of the wire's axis is the end.
        var side = T.Abs(y);
        var q = T.Sqrt(x * x + y * y) - T.C(ring);
        T ex = x - T.C(ring * cos), ey = side - T.C(ring * sin);
        var past = side * T.C(cos) - x * T.C(sin);
        var flat = T.IfLess(T.C(0), past, ex * ex + ey * ey, q * q);
        return T.Sqrt(flat + z * z) - T.C(wire);
    }
}
