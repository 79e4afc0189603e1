using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Checks;

/// <summary>How likely it is that every hinge of the line runs free as it comes from the bench.</summary>
/// <remarks>
/// Both joints that are built are assembled after finishing: a drawn pin in reamed holes, or an eye closed over a
/// bar that was polished first. Only a clearance that castings keep between them scatters as castings do.
/// </remarks>
internal sealed class RunningCheck : ICheck
{
    // One standard deviation each, mm. Assumed: a drawn wire and a reamed hole hold a hundredth, an eye closed by hand two.
    private const double DrawnMm = 0.01, ReamedMm = 0.01, ClosedEyeMm = 0.02;

    // Below this a joint is oily but not free. Assumed.
    private const double LeastClearanceMm = 0.01;

    private const double Wanted = 0.99, Worst = 0.5;

    private static readonly CheckRule Free = new(
        "joints-run-free", "%", "99 of 100 lines run free without rework: normal scatter of hole and bar, all joints together", Marks.Calculated);

    private static readonly CheckRule Sides = new("eye-side-play", "%", "99 of 100 lines run free between the cheeks: eye and gap scatter as finished castings do", Marks.Calculated);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop) => Of(model.Piece);

    /// <summary>The findings, off the solids alone.</summary>
    internal static IEnumerable<Finding> Of(Piece piece)
    {
        var link = piece[PartRole.Link].AsSet;
        var joints = piece.Layout.Count + 1;
        var isPinned = piece.Hinge.Kind == HingeKind.PinnedKnuckles;
        var sigma = isPinned ? RunningFit.SigmaMm(ReamedMm, DrawnMm) : RunningFit.SigmaMm(ClosedEyeMm, DrawnMm);
        var (bar, span) = StrengthCheck.BarAndSpan(piece);
        var (hole, _, width) = StrengthCheck.EyeOf(piece.Link, link);
        yield return Judge(
            Free,
            FormattableString.Invariant($"{joints} joints, {hole - bar:0.000} clear on the diameter, scatter {sigma:0.000}"),
            hole - bar,
            sigma,
            "hinge.diametral_clearance_mm",
            1);

        // Faces are filed to fit while the joint is made: half of the casting's scatter is left. Assumed.
        var side = RunningFit.SigmaMm(piece.Design.Brief.Process.ToleranceMm / 2, piece.Design.Brief.Process.ToleranceMm / 2);
        yield return Judge(
            Sides,
            FormattableString.Invariant($"{joints} joints, {span - width:0.000} clear between the cheeks, scatter {side:0.000}"),
            span - width,
            side,
            "hinge.side_clearance_mm",
            2);

        Finding Judge(CheckRule rule, string where, double clearance, double scatter, string field, int gaps) => rule.AtLeast(
            where,
            100 * RunningFit.AllRunFree(joints, clearance, scatter, LeastClearanceMm),
            100 * Wanted,
            100 * Worst,
            FormattableString.Invariant($"set {field} to {RunningFit.ClearanceForMm(joints, scatter, Wanted, LeastClearanceMm) / gaps:0.000}, or expect to fit joints by hand"));
    }
}
