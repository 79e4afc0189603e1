using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>An outline in the half-plane (distance from the axis, height) turned about the z axis. Exact where the outline is.</summary>
/// <remarks>An outline that touches the axis should reach past it to negative distances: the axis is no surface.</remarks>
internal readonly struct Revolution<TOutline>(TOutline outline) : IShape
    where TOutline : struct, IOutline
{
    public Bounds Bounds
    {
        get
        {
            var (_, highU, lowV, highV) = outline.Reach;
            return new Bounds(new Vec3(-highU, -highU, lowV), new Vec3(highU, highU, highV));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
        => outline.Distance(T.Sqrt(x * x + y * y), z);
}
