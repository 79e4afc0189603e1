using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>How one piece of the line lies on the piece before it.</summary>
/// <param name="Hinge">Turn about the bar, above 0 towards the skin, radians.</param>
/// <param name="Sideways">Turn about the upright of the piece before, radians.</param>
/// <param name="Twist">Turn about the run of the piece before, radians.</param>
/// <param name="AlongMm">The bar from the middle of its eye, along the line.</param>
/// <param name="AcrossMm">The same across the line.</param>
/// <param name="UpMm">The same away from the skin.</param>
public readonly record struct JointLie(double Hinge, double Sideways, double Twist, double AlongMm, double AcrossMm, double UpMm)
{
    /// <summary>The bar from the middle of its eye, square to its axis, mm.</summary>
    public double RadialMm => double.Hypot(AlongMm, UpMm);

    /// <summary>Reads the lie of two posed pieces.</summary>
    /// <param name="eye">The piece with the eye, in the outer frame.</param>
    /// <param name="eyeCentre">The middle of the eye in that piece's frame.</param>
    /// <param name="bar">The piece with the bar.</param>
    /// <param name="barCentre">The middle of the bar in that piece's frame.</param>
    public static JointLie Of(Pose eye, Vec3 eyeCentre, Pose bar, Vec3 barCentre)
    {
        var gap = bar.Point(barCentre) - eye.Point(eyeCentre);
        var (hinge, sideways, twist) = Turns(eye, bar);
        return new JointLie(hinge, sideways, twist, gap.Dot(eye.AxisX), gap.Dot(eye.AxisY), gap.Dot(eye.AxisZ));
    }

    /// <summary>The turn from one frame to another, parted into one about y first and then one about an axis square to y.</summary>
    /// <remarks>Source: swing and twist of a quaternion, as rotations of joints are usually parted; exact for the hinge, and the rest is small here.</remarks>
    internal static (double Hinge, double Sideways, double Twist) Turns(Pose from, Pose to)
    {
        double xx = from.AxisX.Dot(to.AxisX), yy = from.AxisY.Dot(to.AxisY), zz = from.AxisZ.Dot(to.AxisZ);
        double zy = from.AxisZ.Dot(to.AxisY), yz = from.AxisY.Dot(to.AxisZ);
        double xz = from.AxisX.Dot(to.AxisZ), zx = from.AxisZ.Dot(to.AxisX);
        double yx = from.AxisY.Dot(to.AxisX), xy = from.AxisX.Dot(to.AxisY);

        // The turn as a quaternion; neighbours of a line never turn by more than a right angle, so its real part is large.
        var w = Math.Sqrt(Math.Max(1e-12, 1 + xx + yy + zz)) / 2;
        double qx = (zy - yz) / (4 * w), qy = (xz - zx) / (4 * w), qz = (yx - xy) / (4 * w);

        // Take out the turn about y: what is left has no part along y.
        var length = double.Hypot(w, qy);
        double c = w / length, s = qy / length;
        double restX = qx * c + qz * s, restZ = qz * c - qx * s;
        return (2 * Math.Atan2(qy, w), 2 * restZ, 2 * restX);
    }
}
