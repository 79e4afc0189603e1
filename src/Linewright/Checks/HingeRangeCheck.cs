using Linewright.Assembly;
using Linewright.Layout;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How far two neighbouring links turn on each other before something meets, each way, and what meets.</summary>
/// <remarks>
/// Turned with the play shared out evenly; backwards also with the line slack. A slack line is stopped
/// earlier, so its stones need not stand nearer; the taut pose is not tried. Both hands of a sideways bend and of a twist are tried, the smaller counts.
/// </remarks>
internal sealed class HingeRangeCheck : ICheck
{
    // A tight curve or a wrap over the hand. Common practice: 25 to 35 degrees.
    private const double LeastInwardDeg = 25;

    // Over what the worn form needs, so that the line lies and is not held. Assumed.
    private const double MarginDeg = 5;

    // Bent back less, the line is stiff to thread; more, and claws catch each other. Common practice, 10 to 20, from 8 for small links.
    private const double LeastOutwardDeg = 8, MostOutwardDeg = 20;

    // Common practice: 1 to 3 degrees by play, more feels loose. Ends of the scale: Assumed.
    private const double StiffDeg = 0.5, LooseDeg = HingeRule.FirmDeg, MostSidewaysDeg = 6;

    // Nothing turns further than this before it is called free.
    private const double MostOutDeg = 40, MostSideDeg = 15;

    /// <summary>So far a joint is turned inwards: one that was measured at this has met nothing.</summary>
    internal const double MostInwardDeg = 75;

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var joint = Joint.Of(model);
        yield return Inward(model, joint);
        stop.ThrowIfCancellationRequested();

        var shared = Backwards(joint, joint.SharedMm);
        yield return Outward(model, joint, shared);
        yield return MetalStopsFirst(model, joint, shared, Backwards(joint, joint.SlackMm));
        stop.ThrowIfCancellationRequested();

        yield return Loose(model, joint, "flex-sideways", "sideways bend", Vec3.UnitZ);
        yield return Loose(model, joint, "twist", "twist", Vec3.UnitX);
    }

    /// <summary>The largest turn between two pieces of the line on the wrist of the brief, degrees.</summary>
    public static double WornDeg(PieceModel model)
    {
        var wrist = model.Piece.Design.Brief.Wrist;
        var fit = WristFit.Solve(model.Piece.Layout.Chain, wrist.DepthRatio, wrist.Exponent);
        fit = fit.Fits ? fit : WristFit.Solve(model.Piece.Layout.Chain, 1, 2);
        return fit.Fits ? fit.Fit.LargestHingeAngleDeg : 360.0 / (model.Piece.Layout.Count + 1);
    }

    private static Finding Inward(PieceModel model, Joint joint)
    {
        var worn = WornDeg(model);
        var needed = Math.Max(LeastInwardDeg, worn + MarginDeg);
        var turn = joint.Turn(joint.SharedMm, Vec3.UnitY, double.DegreesToRadians(MostInwardDeg));
        var measured = Degrees(turn);
        var isMet = measured >= needed;
        return new Finding(
            "flex-inward",
            isMet ? Verdict.Pass : measured >= worn ? Verdict.Caution : Verdict.Fail,
            Where(joint, turn, joint.SharedMm, Vec3.UnitY),
            measured, needed, "deg",
            FormattableString.Invariant($"at least 25 for a tight curve, and {MarginDeg:0} over the {worn:0.0} that this wrist needs"),
            Marks.CommonPractice,
            isMet ? "" : "raise link.stone_gap_mm, or lower the hinge's axis with a smaller hinge.bar_mm or hinge.eye_wall_mm")
        {
            Spots = joint.Spots(turn, joint.SharedMm, Vec3.UnitY),
        };
    }

    /// <summary>Bent back until something meets, with the next link pushed back by a way.</summary>
    public static FirstContactResult Backwards(Joint joint, double backMm)
        => joint.Turn(backMm, -Vec3.UnitY, double.DegreesToRadians(MostOutDeg));

    private static Finding Outward(PieceModel model, Joint joint, FirstContactResult turn)
    {
        var measured = Degrees(turn);
        var (isLow, isHigh) = (measured < LeastOutwardDeg, measured > MostOutwardDeg);
        return new Finding(
            "flex-outward",
            isLow || isHigh ? Verdict.Caution : Verdict.Pass,
            Where(joint, turn, joint.SharedMm, -Vec3.UnitY),
            measured, isHigh ? MostOutwardDeg : LeastOutwardDeg, "deg",
            "a line bends backwards by 8 to 20 to be threaded, then metal stops it",
            Marks.CommonPractice,
            isLow ? OutwardCure(model) : isHigh ? "lower hinge.outward_stop_deg" : "")
        {
            Spots = joint.Spots(turn, joint.SharedMm, -Vec3.UnitY),
        };
    }

    /// <summary>Stops stand where they were asked for, or sooner where stones would meet: then only a wider gap lets the line bend further.</summary>
    private static string OutwardCure(PieceModel model)
    {
        var asked = double.DegreesToRadians(model.Piece.Design.Brief.Hinge.OutwardStopDeg);
        return 2 * model.Piece.Link.OutwardHalf < asked - 1e-9
            ? "raise link.stone_gap_mm: the stops stand where the stones would meet"
            : "raise hinge.outward_stop_deg";
    }

    private static Finding MetalStopsFirst(PieceModel model, Joint joint, FirstContactResult shared, FirstContactResult slack)
    {
        double Gap(FirstContactResult turn, double backMm) => StoneGap.At(model, joint.Next(backMm, -turn.Angle)).Distance;
        static bool IsMetal(FirstContactResult turn) => turn is { Touches: true, Nearest: { NameA: not "stone", NameB: not "stone" } };
        double gapShared = Gap(shared, joint.SharedMm), gapSlack = Gap(slack, joint.SlackMm);

        // The worse of the two: a stone that meets, else the smaller gap.
        var isShared = IsMetal(shared) != IsMetal(slack) ? !IsMetal(shared) : gapShared < gapSlack;
        var (turn, backMm, gap) = isShared ? (shared, joint.SharedMm, gapShared) : (slack, joint.SlackMm, gapSlack);
        var pose = isShared ? "play shared out" : "line slack";
        var isMetal = IsMetal(turn) && gap > 0;
        return new Finding(
            "metal-stops-first",
            isMetal ? Verdict.Pass : Verdict.Fail,
            turn.Touches
                ? FormattableString.Invariant($"bent back by {Degrees(turn):0.0} deg, {pose}: {joint.Words(turn, backMm, -Vec3.UnitY)}; gap between the stones")
                : $"bent back, {pose}: nothing stops it",
            gap, 0, "mm",
            "metal must stop the hinge before a stone is met",
            Marks.CommonPractice,
            isMetal ? "" : "lower hinge.outward_stop_deg, or raise link.stone_gap_mm")
        {
            Spots = joint.Spots(turn, backMm, -Vec3.UnitY),
        };
    }

    private static Finding Loose(PieceModel model, Joint joint, string rule, string what, Vec3 axis)
    {
        var limit = double.DegreesToRadians(MostSideDeg);
        var left = joint.Turn(joint.SharedMm, axis, limit);
        var right = joint.Turn(joint.SharedMm, axis, -limit);
        var turn = Math.Abs(right.Angle) < Math.Abs(left.Angle) ? right : left;
        var measured = Degrees(turn);
        var verdict = measured is >= StiffDeg and <= LooseDeg ? Verdict.Pass : measured <= MostSidewaysDeg ? Verdict.Caution : Verdict.Fail;
        return new Finding(
            rule,
            verdict,
            $"{what}: {Where(joint, turn, joint.SharedMm, axis)}",
            measured, measured < StiffDeg ? StiffDeg : LooseDeg, "deg",
            "1 to 3 by play; more feels loose, less feels stiff",
            Marks.CommonPractice,
            verdict == Verdict.Pass ? ""
                : measured < StiffDeg ? "raise hinge.side_clearance_mm"
                : LooseCure(model.Piece.Hinge, model.Piece.Design.Spec!))
        {
            Spots = joint.Spots(turn, joint.SharedMm, axis),
        };
    }

    /// <summary>An eye tips on its bar by the clearance over its width: a wider one helps where there is room for it, a tighter fit where there is none.</summary>
    private static string LooseCure(HingeForm hinge, LineSpec spec)
    {
        var clearance = hinge.HoleMm - hinge.BarMm;
        var firm = HingeRule.FirmWidthMm(clearance, hinge.Kind);
        var fitted = hinge.EyeWidthMm * clearance / firm;
        if (firm <= hinge.EyeWidthMm)
        {
            return "lower hinge.diametral_clearance_mm or hinge.side_clearance_mm: the eye is wide enough";
        }

        return firm <= HingeForm.MostWidthMm(spec, hinge.Kind)
            ? FormattableString.Invariant($"set hinge.eye_width_mm to {firm:0.00}")
            : FormattableString.Invariant($"take larger stones, or set hinge.diametral_clearance_mm to {fitted:0.000} and fit every joint by hand; no collar is left beside an eye of {firm:0.00}");
    }

    private static double Degrees(FirstContactResult turn) => double.RadiansToDegrees(Math.Abs(turn.Angle));

    private static string Where(Joint joint, FirstContactResult turn, double backMm, Vec3 axis)
        => turn.Touches ? joint.Words(turn, backMm, axis) : "nothing meets";
}
