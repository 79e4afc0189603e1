using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;

namespace Linewright.Solids.Shapes;

/// <summary>A rectangle about a centre, with rounded corners (a stadium where the radius is half the smaller side). Exact.</summary>
internal readonly struct RectangleOutline(double centreU, double centreV, double halfU, double halfV, double corner) : IOutline
{
    public (double LowU, double HighU, double LowV, double HighV) Reach
        => (centreU - halfU, centreU + halfU, centreV - halfV, centreV + halfV);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T u, T v)
        where T : struct, IReal<T>
    {
        var zero = T.C(0);
        T a = T.Abs(u - T.C(centreU)) - T.C(halfU - corner), b = T.Abs(v - T.C(centreV)) - T.C(halfV - corner);
        T p = T.Max(a, zero), q = T.Max(b, zero);

        // Beside a side, inside or out, the plain difference keeps the gradient exact on the surface too.
        return T.IfLess(zero, p * q, T.Sqrt(p * p + q * q), T.Max(a, b)) - T.C(corner);
    }
}
