using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A tapered capsule: all balls from radius at the origin to radius at height up the z axis. Exact distance.</summary>
/// <remarks>Needs |foot - tip| below the height, else one ball swallows the other; the factory refuses that.</remarks>
internal readonly struct RoundCone : IShape
{
    private readonly double foot, tip, height, slope, perCos;

    public RoundCone(double foot, double tip, double height)
    {
        this.foot = foot;
        this.tip = tip;
        this.height = height;
        slope = (foot - tip) / height;
        perCos = slope / Math.Sqrt(1 - slope * slope);
    }

    public Bounds Bounds
    {
        get
        {
            var wide = Math.Max(foot, tip);
            return new Bounds(
                new Vec3(-wide, -wide, Math.Min(-foot, height - tip)),
                new Vec3(wide, wide, Math.Max(foot, height + tip)));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T x, T y, T z)
        where T : struct, IReal<T>
    {
        // The nearest ball's centre lies where the line to the point meets the axis at the cone's own angle.
        var across = x * x + y * y;
        var s = T.Min(T.Max(z - T.Sqrt(across) * T.C(perCos), T.C(0)), T.C(height));
        var up = z - s;
        return T.Sqrt(across + up * up) + s * T.C(slope) - T.C(foot);
    }
}
