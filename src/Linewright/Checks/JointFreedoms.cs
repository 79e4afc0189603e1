using Linewright.Assembly;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How far two neighbouring links may lie off each other, felt on their solids: what poses must keep to.</summary>
public static class JointFreedoms
{
    // As the checks look: further than any line turns.
    private const double MostInward = 75 * Math.PI / 180, MostOutward = 40 * Math.PI / 180, MostSide = 15 * Math.PI / 180;

    // A hair short of contact: what lies at its limit does not touch.
    private const double Hair = 0.97, MostSlideMm = 1;

    /// <summary>Feels the joint of a piece with its play shared out; takes a tenth of a second.</summary>
    public static JointFreedom Of(PieceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var joint = Joint.Of(model);
        double Turn(Vec3 axis, double most) => Hair * Math.Abs(joint.Turn(joint.SharedMm, axis, most).Angle);
        double Both(Vec3 axis) => Math.Min(Turn(axis, MostSide), Turn(axis, -MostSide));
        double Slide(Vec3 way) => Hair * Math.Abs(joint.Slide(way, MostSlideMm).Angle);
        return new JointFreedom(
            Turn(Vec3.UnitY, MostInward),
            Turn(-Vec3.UnitY, MostOutward),
            Both(Vec3.UnitZ),
            Both(Vec3.UnitX),
            Math.Min(Math.Min(Slide(Vec3.UnitX), Slide(-Vec3.UnitX)), Math.Min(Slide(Vec3.UnitZ), Slide(-Vec3.UnitZ))),
            Math.Min(Slide(Vec3.UnitY), Slide(-Vec3.UnitY)));
    }
}
