using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How far the first and the last link turn on the clasp, and what meets first.</summary>
/// <remarks>
/// Felt on the solids with the play shared evenly. The clasp is the longest rigid piece of the line, so its two hinges
/// turn furthest on a wrist.
/// </remarks>
internal sealed class ClaspHingeCheck : ICheck
{
    // Past what the wrist asks: a line is also put on, rolled over an edge and stored. Assumed.
    private const double MarginDeg = 5;

    private const double InwardLimitDeg = 75, OutwardLimitDeg = 60;

    private static readonly CheckRule Inward = new("clasp-hinge-inward", "deg", "turn at the clasp on the wrist, and 5 more to put it on", Marks.Calculated);
    private static readonly CheckRule Outward = new("clasp-hinge-outward", "deg", "bent backwards, metal must stop the hinge before a stone is struck; some 10 to 20 degrees", Marks.CommonPractice);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var (piece, fit) = (model.Piece, ClaspCheck.FitOf(model.Piece));
        double reach = 1.3 * piece.Layout.PitchMm, end = piece.Clasp.LengthMm;
        var wantedFirst = fit?.HingeAngles[0] ?? piece.Layout.Fit.ClaspHingeAngle;
        var wantedLast = fit?.HingeAngles[^1] ?? piece.Layout.Fit.ClaspHingeAngle;
        double play = piece.Hinge.PlayMm, half = piece.Layout.PitchMm / 2;
        Body[] box = [model.BodyOf(PartRole.Box, p => p.X < reach)];
        Body[] tongue = [model.BodyOf(PartRole.Tongue, p => p.X > end - reach)];
        var axis = new Vec3(0, 0, piece.Hinge.HeightMm);
        (string Where, Body[] Clasp, Vec3 Axis, Pose Link, int Way, double Wanted)[] hinges =
        [
            ("last link on the box", box, axis, Pose.Move(play - half, 0, 0), -1, wantedLast),
            ("first link on the tongue", tongue, axis + Vec3.UnitX * (end - play), Pose.Move(end - play + half, 0, 0), 1, wantedFirst),
        ];
        foreach (var (where, clasp, at, link, way, wanted) in hinges)
        {
            stop.ThrowIfCancellationRequested();
            var inward = Turn(way * InwardLimitDeg);
            var needed = double.RadiansToDegrees(wanted);
            yield return Inward.AtLeast(
                Met(where, inward), Math.Abs(double.RadiansToDegrees(inward.Angle)), needed + MarginDeg, needed, "more hinge.relief_mm, or a shorter clasp: the skin sides close on each other");

            var outward = Turn(-way * OutwardLimitDeg);
            var stone = outward.Touches && outward.Nearest is { NameA: "stone" } or { NameB: "stone" };
            var turn = Math.Abs(double.RadiansToDegrees(outward.Angle));
            var finding = Outward.Between(Met(where, outward), turn, 5, 30, 2, 60, "change hinge.outward_stop_deg");
            yield return stone
                ? Outward.Says(Verdict.Fail, Met(where, outward), turn, null, "a stone is struck before the stop holds: lower hinge.outward_stop_deg or a wider link.stone_gap_mm")
                : finding;

            FirstContactResult Turn(double deg) => FirstContact.Turning(
                clasp, Pose.Identity, [.. model.LinkBodies], link, at, Vec3.UnitY, double.DegreesToRadians(deg));
        }
    }

    private static string Met(string where, FirstContactResult turn)
        => turn.Touches ? $"{where}: {turn.Nearest.NameB} meets {turn.Nearest.NameA}" : $"{where}: nothing meets";
}
