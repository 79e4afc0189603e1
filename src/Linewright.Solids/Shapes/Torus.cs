using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A ring of round wire about the z axis. Exact distance.</summary>
internal readonly struct Torus(double ring, double wire) : IShape
{
    public Bounds Bounds => Bounds.Around(ring + wire, ring + wire, wire);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
    {
        var q = T.Sqrt(x * x + y * y) - T.C(ring);
        return T.Sqrt(q * q + z * z) - T.C(wire);
    }
}
