using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>Everything below the plane z = 0. Exact distance, endless.</summary>
internal readonly struct HalfSpace : IShape
{
    public Bounds Bounds => Bounds.Everything;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
        => z;
}
