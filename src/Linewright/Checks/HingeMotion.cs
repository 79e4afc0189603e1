using Linewright.Assembly;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How two neighbouring links move on each other, for whoever shows it: the play shared out evenly, each way to first contact.</summary>
/// <param name="Inward">Round the wrist.</param>
/// <param name="Outward">Backwards, to the stop.</param>
/// <param name="WornAngle">The largest turn that the brief's wrist asks for, radians.</param>
/// <param name="Next">The next link unturned, in the first link's frame.</param>
/// <param name="Axis">A point of the bar's axis, which runs along y, in the first link's frame, mm.</param>
public sealed record HingeMotion(HingeLimit Inward, HingeLimit Outward, double WornAngle, Pose Next, Vec3 Axis)
{
    // As the checks look: further than any line turns.
    private const double MostInward = 75 * Math.PI / 180, MostOutward = 40 * Math.PI / 180;

    /// <summary>Feels the joint of a piece; takes tens of milliseconds.</summary>
    public static HingeMotion Of(PieceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var joint = Joint.Of(model);
        var link = model.Piece.Link;
        return new HingeMotion(
            Limit(joint, Vec3.UnitY, MostInward),
            Limit(joint, -Vec3.UnitY, MostOutward),
            double.DegreesToRadians(HingeRangeCheck.WornDeg(model)),
            joint.Next(joint.SharedMm),
            link.NextBarAxis - new Vec3(joint.SharedMm, 0, 0));
    }

    private static HingeLimit Limit(Joint joint, Vec3 axis, double most)
    {
        var turn = joint.Turn(joint.SharedMm, axis, most);
        return new HingeLimit(
            Math.Abs(turn.Angle), turn.Touches, turn.Touches ? joint.Words(turn, joint.SharedMm, axis) : "", joint.Spots(turn, joint.SharedMm, axis));
    }
}
