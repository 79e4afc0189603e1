using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>Rounds a placement to what a file needs, so that the last bit of a sine, which differs between machines, stays out.</summary>
/// <remarks>Nine digits of an axis move the far end of a necklace by less than a nanometre, and so do six of a place in mm.</remarks>
internal static class SteadyPose
{
    private const int AxisDigits = 9;
    private const int PlaceDigits = 6;

    /// <summary>Rounds a part of a rotation.</summary>
    public static float Axis(double number) => (float)Math.Round(number, AxisDigits);

    /// <summary>Rounds a coordinate in mm.</summary>
    public static float Place(double number) => (float)Math.Round(number, PlaceDigits);

    /// <summary>Twelve numbers: the images of the x, y and z axis, then of the origin.</summary>
    public static float[] Numbers(Pose pose) =>
    [
        Axis(pose.AxisX.X), Axis(pose.AxisX.Y), Axis(pose.AxisX.Z),
        Axis(pose.AxisY.X), Axis(pose.AxisY.Y), Axis(pose.AxisY.Z),
        Axis(pose.AxisZ.X), Axis(pose.AxisZ.Y), Axis(pose.AxisZ.Z),
        Place(pose.Origin.X), Place(pose.Origin.Y), Place(pose.Origin.Z),
    ];
}
