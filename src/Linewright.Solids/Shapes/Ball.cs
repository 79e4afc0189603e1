using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A ball about the origin. Exact distance.</summary>
internal readonly struct Ball(double radius) : IShape
{
    public Bounds Bounds => Bounds.Around(radius, radius, radius);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
        => T.Sqrt(x * x + y * y + z * z) - T.C(radius);
}
