using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Checks;

/// <summary>How likely it is that every hinge of the line runs free as it comes from the bench.</summary>
/// <remarks>What scatters, and by how much, is <see cref="JointSpread"/>'s to say. All parts are taken to hang on one tree.</remarks>
internal sealed class RunningCheck : ICheck
{
    private const double Wanted = 0.99, Worst = 0.5;

    private static readonly CheckRule Free = new(
        "joints-run-free", "%", "99 of 100 lines run free without rework: normal scatter of hole and bar, all joints together", Marks.Calculated);

    private static readonly CheckRule Sides = new("eye-side-play", "%", "99 of 100 lines run free between the cheeks: eye and gap scatter as finished castings do", Marks.Calculated);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop) => Of(model.Piece);

    /// <summary>The findings, off the solids alone.</summary>
    internal static IEnumerable<Finding> Of(Piece piece)
    {
        var joints = piece.Layout.Count + 1;
        var spread = JointSpread.Of(piece.Design.Brief, piece.Hinge.Kind);
        var (bore, side) = Clearances(piece);
        yield return Judge(
            Free,
            FormattableString.Invariant($"{joints} joints, {bore:0.000} clear on the diameter, scatter {spread.BoreMm:0.000}"),
            bore,
            spread.BoreMm,
            0,
            "hinge.diametral_clearance_mm",
            1);

        yield return Judge(
            Sides,
            FormattableString.Invariant($"{joints} joints, {side:0.000} clear between the cheeks, scatter {spread.SideMm:0.000}"),
            side,
            spread.SideMm,
            spread.SideSharedMm,
            "hinge.side_clearance_mm",
            2);

        Finding Judge(CheckRule rule, string where, double clearance, double scatter, double shared, string field, int gaps) => rule.AtLeast(
            where,
            100 * RunningFit.AllRunFree(joints, clearance, scatter, JointSpread.LeastClearanceMm, shared),
            100 * Wanted,
            100 * Worst,
            FormattableString.Invariant($"set {field} to {RunningFit.ClearanceForMm(joints, scatter, Wanted, JointSpread.LeastClearanceMm, shared) / gaps:0.000}, or expect to fit joints by hand"));
    }

    /// <summary>Hole less bar, and the room between the cheeks less the eye's width, measured on the solids, mm.</summary>
    internal static (double Bore, double Side) Clearances(Piece piece)
    {
        var (bar, span) = StrengthCheck.BarAndSpan(piece);
        var (hole, _, width) = StrengthCheck.EyeOf(piece.Link, piece[PartRole.Link].AsSet);
        return (hole - bar, span - width);
    }
}
