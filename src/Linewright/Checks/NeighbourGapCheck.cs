using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The gaps between two neighbouring links: stone to stone over the whole range, metal to metal as worn, and the play in the hinge itself.</summary>
/// <remarks>
/// The range runs from the turn that the wrist needs to where metal stops the back-bend, with the play shared out and
/// with the line slack: a slack line starts nearer but stops earlier. The taut pose is not tried. Stones are measured exactly on their facets, metal by feeling its surfaces,
/// from straight to the turn that the wrist needs: backwards metal is meant to meet, at its stops.
/// </remarks>
internal sealed class NeighbourGapCheck : ICheck
{
    // Two girdles nearer than this meet when a link is knocked. Common practice: no contact in any pose; the figure is Assumed.
    private const double LeastStoneGapMm = 0.05;

    // Side faces of a hinge, the nearest that metal comes from straight to worn. Common practice: 0.05 to 0.10 a face.
    private const double LeastMetalGapMm = 0.05;

    // Two poses a degree: between two, girdles move less than a hundredth of a millimetre against each other.
    private const double StepDeg = 0.5;

    // Measured against asked: twice what the probing and a mesh of 5 um leave open. Assumed.
    private const double PlayToleranceMm = 0.02;

    // Side clearance, a side. Common practice: 0.05 to 0.10.
    private const double LeastSideMm = 0.05, MostSideMm = 0.12;

    // The bearing's own surroundings are left out up to this short of the window around it.
    private const double WindowEdgeMm = 0.01;

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var joint = Joint.Of(model);
        yield return Stones(model, joint);
        stop.ThrowIfCancellationRequested();
        yield return Metal(model, joint);
        stop.ThrowIfCancellationRequested();
        yield return Play(model, joint);
        yield return SidePlay(joint);
    }

    private static Finding Stones(PieceModel model, Joint joint)
    {
        var inward = HingeRangeCheck.WornDeg(model);
        var (least, words) = (double.PositiveInfinity, "");
        foreach (var (backMm, pose) in new[] { (joint.SharedMm, "play shared out"), (joint.SlackMm, "line slack") })
        {
            var outward = double.RadiansToDegrees(HingeRangeCheck.Backwards(joint, backMm).Angle);
            var steps = (int)Math.Ceiling((inward + outward) / StepDeg);
            for (var i = 0; i <= steps; i++)
            {
                var turn = -outward + (inward + outward) * i / steps;
                var gap = StoneGap.At(model, joint.Next(backMm, double.DegreesToRadians(turn))).Distance;
                if (gap < least)
                {
                    least = gap;
                    words = FormattableString.Invariant(
                        $"{pose}, turned {Math.Abs(turn):0.0} deg {(turn < 0 ? "backwards" : "inwards")}, of {outward:0.0} backwards to {inward:0.0} inwards");
                }
            }
        }

        var isClear = least >= LeastStoneGapMm;
        return new Finding(
            "stone-gap-in-range",
            isClear ? Verdict.Pass : Verdict.Fail,
            words,
            least, LeastStoneGapMm, "mm",
            "stones must not meet in any pose",
            Marks.CommonPractice,
            isClear ? "" : "raise link.stone_gap_mm, or lower hinge.outward_stop_deg");
    }

    private static Finding Metal(PieceModel model, Joint joint)
    {
        var (link, hinge) = (model.Piece.Link, model.Piece.Hinge);
        var window = hinge.EyeRadiusMm + hinge.PlayMm + hinge.ReliefMm - WindowEdgeMm;
        double FromAxis(Vec3 p, Vec3 axis) => double.Hypot(p.X - axis.X, p.Z - axis.Z);

        // Of the eye's link all but the eye between the cheeks, of the next all but the bar and the cheeks' inner faces.
        var (own, other) = (joint.EyeSide[0], joint.BarSide[0]);
        var ownPoints = new FeltPoints(own.Probes, p => Math.Abs(p.Y) > hinge.CheekInnerMm || FromAxis(p, link.EyeCentre) > window);
        var otherPoints = new FeltPoints(other.Probes, p => Math.Abs(p.Y) > hinge.CheekInnerMm + WindowEdgeMm || FromAxis(p, link.BarAxis) > window);

        var worn = HingeRangeCheck.WornDeg(model);
        var steps = (int)Math.Ceiling(worn / StepDeg);
        var (least, words) = (double.PositiveInfinity, "");
        for (var i = 0; i <= steps; i++)
        {
            var turn = worn * i / steps;
            var next = joint.Next(joint.SharedMm, double.DegreesToRadians(turn));
            var first = ownPoints.Nearest(other.Solid, next.Inverse());
            var second = otherPoints.Nearest(own.Solid, next);
            if (Math.Min(first.Gap, second.Gap) < least)
            {
                least = Math.Min(first.Gap, second.Gap);
                var pair = first.Gap < second.Gap ? $"{joint.Feature(first.At)} of the link to the next" : $"{joint.Feature(second.At)} of the next to the link";
                words = FormattableString.Invariant($"{pair}, turned {turn:0.0} deg of the {worn:0.0} that this wrist needs");
            }
        }

        var isClear = least >= LeastMetalGapMm;
        return new Finding(
            "gap-in-hinge",
            isClear ? Verdict.Pass : Verdict.Caution,
            words,
            least, LeastMetalGapMm, "mm",
            "side faces of a joint 0.05 to 0.10 from straight to worn, the bearing left out",
            Marks.CommonPractice,
            isClear ? "" : "raise hinge.relief_mm, or link.stone_gap_mm");
    }

    private static Finding Play(PieceModel model, Joint joint)
    {
        var travel = HingeTravel.Along(joint);
        var asked = 2 * model.Piece.Hinge.PlayMm;
        var isAsked = Math.Abs(travel.TravelMm - asked) <= PlayToleranceMm;
        return new Finding(
            "hinge-play",
            isAsked ? Verdict.Pass : Verdict.Fail,
            $"along the line, from contact to contact: {travel.Words}",
            travel.TravelMm, asked, "mm",
            "bar in eye, on the diameter",
            Marks.Asked,
            isAsked ? "" : "something else meets before the bar: raise hinge.relief_mm or link.stone_gap_mm");
    }

    private static Finding SidePlay(Joint joint)
    {
        var travel = HingeTravel.Across(joint);
        var side = travel.TravelMm / 2;
        var (isTight, isWide) = (side < LeastSideMm, side > MostSideMm);
        return new Finding(
            "hinge-side-clearance",
            isTight || isWide ? Verdict.Caution : Verdict.Pass,
            $"across the line, half of the way from contact to contact: {travel.Words}",
            side, isWide ? MostSideMm : LeastSideMm, "mm",
            "eye between its cheeks 0.05 to 0.10 a side",
            Marks.CommonPractice,
            isTight ? "raise hinge.side_clearance_mm" : isWide ? "lower hinge.side_clearance_mm" : "");
    }
}
