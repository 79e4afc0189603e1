using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;

namespace Linewright.Solids.Shapes;

/// <summary>A circle about the origin of the plane. Exact.</summary>
internal readonly struct CircleOutline(double radius) : IOutline
{
    public (double LowU, double HighU, double LowV, double HighV) Reach => (-radius, radius, -radius, radius);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T u, T v)
        where T : struct, IReal<T>
        => T.Sqrt(u * u + v * v) - T.C(radius);
}
