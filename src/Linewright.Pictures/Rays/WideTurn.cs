using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Rays;

/// <summary>A <see cref="Turn"/> for whole vectors: what a step along each axis of the scene is in the thing's frame. Fourth lanes are 0.</summary>
internal struct WideTurn(Pose place)
{
    private Vector128<float> stepX = Lanes(place.AxisX.X, place.AxisY.X, place.AxisZ.X);
    private Vector128<float> stepY = Lanes(place.AxisX.Y, place.AxisY.Y, place.AxisZ.Y);
    private Vector128<float> stepZ = Lanes(place.AxisX.Z, place.AxisY.Z, place.AxisZ.Z);
    private Vector128<float> origin = Lanes(place.Origin.X, place.Origin.Y, place.Origin.Z);

    /// <summary>A direction of the scene, in the thing's frame.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector128<float> Inwards(Vector128<float> v) => Vector128.FusedMultiplyAdd(
        Vector128.Create(v.GetElement(2)),
        stepZ,
        Vector128.FusedMultiplyAdd(Vector128.Create(v.GetElement(1)), stepY, Vector128.Create(v.ToScalar()) * stepX));

    /// <summary>A point of the scene, in the thing's frame.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly Vector128<float> PointInwards(Vector128<float> p) => Inwards(p - origin);

    private static Vector128<float> Lanes(double x, double y, double z) => Vector128.Create((float)x, (float)y, (float)z, 0);
}
