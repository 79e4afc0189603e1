using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Room round the stone: from the culet to the skin, through the opening beneath, and down between the claws as cast.</summary>
internal sealed class StoneRoomCheck : ICheck
{
    // Common practice: 0.3, half a millimetre where skin is pressed.
    private const double LeastCuletMm = 0.3;

    // A fillet or a rim takes less off an opening than this; a hinge more. Assumed.
    private const double SeenPercent = 2;

    // Common practice: opening 55 to 75 % of the stone, wall left 0.6.
    private const double LeastOpening = 0.55, MostOpening = 0.75, LeastLeftMm = 0.6;

    // A girdle drawn with flats stands out by a part in a thousand, and a setter's bearing gives as much. Assumed.
    private const double EntrySlackMm = 0.01;

    private const double EntrySpacingMm = 0.08;
    private const int EntryPoses = 12, Azimuths = 48, Heights = 9;

    // Only what lies outside this share of the radius can meet a claw on the way down.
    private const double Inner = 0.7;

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var piece = model.Piece;
        var link = piece[PartRole.Link];
        yield return Culet(model);
        foreach (var finding in Opening(link.AsSet, piece.Link))
        {
            yield return finding;
        }

        stop.ThrowIfCancellationRequested();
        yield return Entry(piece, link.AsCast);
    }

    private static Finding Culet(PieceModel model)
    {
        var piece = model.Piece;
        var mesh = model.MeshOf(PartRole.Link).Mesh;
        double? room = mesh.TriangleCount == 0 ? null : piece.Link.GirdleHeightMm + piece.Stone.Body.Bounds.Low.Z - mesh.Bounds.Low.Z;
        var isClear = room is >= LeastCuletMm;
        return new Finding(
            "culet-clearance", isClear ? Verdict.Pass : Verdict.Fail, "culet over the skin side of the link", room, LeastCuletMm, "mm",
            "nothing sharp may reach the skin", Marks.CommonPractice, isClear ? "" : "raise setting.culet_clearance_mm");
    }

    private static IEnumerable<Finding> Opening(Solid metal, LinkForm form)
    {
        // The narrowest way out at any height of the rail, and beside it the least metal across the line.
        var (narrowest, left) = (double.PositiveInfinity, double.PositiveInfinity);
        for (var i = 1; i < Heights; i++)
        {
            var centre = new Vec3(0, 0, form.RailMm * i / Heights);
            for (var k = 0; k < Azimuths; k++)
            {
                var turn = 2 * Math.PI * k / Azimuths;
                narrowest = Math.Min(narrowest, ClawProfile.March(metal, centre, new Vec3(Math.Cos(turn), Math.Sin(turn), 0), form.StoneMm) ?? form.StoneMm);
            }
        }

        var middle = new Vec3(0, 0, form.RailMm / 2);
        foreach (var side in (Vec3[])[Vec3.UnitY, -Vec3.UnitY])
        {
            if (ClawProfile.March(metal, middle, side, form.StoneMm) is { } inner
                && ClawProfile.March(metal, middle + side * 2 * form.StoneMm, -side, 2 * form.StoneMm) is { } outer)
            {
                left = Math.Min(left, 2 * form.StoneMm - outer - inner);
            }
        }

        var share = 100 * 2 * narrowest / form.StoneMm;
        var (isNarrow, isWide) = (share < 100 * LeastOpening - 0.5, share > 100 * MostOpening + 0.5);
        yield return new Finding(
            "opening", isNarrow || isWide ? Verdict.Caution : Verdict.Pass, "opening under the stone, at its narrowest", share,
            100 * (isWide ? MostOpening : LeastOpening), "%", "55 to 75 % of the stone, for light and brush", Marks.CommonPractice,
            isNarrow ? OpeningCure(form, share) : isWide ? "lower link.opening_percent" : "");
        var isStrong = left >= LeastLeftMm;
        yield return new Finding(
            "opening-wall", isStrong ? Verdict.Pass : Verdict.Fail, "base rail beside the opening, across the line", left, LeastLeftMm, "mm",
            "wall left beside an opening", Marks.CommonPractice, isStrong ? "" : "lower link.opening_percent, or raise link.rail_mm");
    }

    /// <summary>The base opens as far as asked, or as far as bar and eye of its own joints let it: then only more room for those helps.</summary>
    private static string OpeningCure(LinkForm form, double share)
        => share < 100 * 2 * form.OpeningMm / form.StoneMm - SeenPercent
            ? "raise link.stone_gap_mm, or take larger stones or a metal that casts thinner: bar and eye reach in from both ends"
            : "raise link.opening_percent";

    private static Finding Entry(Piece piece, Solid cast)
    {
        var seat = Pose.Move(0, 0, piece.Link.GirdleHeightMm);
        var inner = Inner * piece.Link.StoneMm / 2;
        var probes = ProbeSurface.Of(
            piece.SeatedStone, piece.Stone.Body.ToMesh().Moved(seat), EntrySpacingMm, p => double.Hypot(p.X, p.Y) > inner);
        var most = cast.Bounds.High.Z - piece.Link.GirdleHeightMm + piece.Stone.DepthMm;
        var (least, at) = (double.PositiveInfinity, 0.0);
        for (var i = 0; i <= EntryPoses; i++)
        {
            var raised = most * i / EntryPoses;
            for (var k = 0; k < probes.Count; k++)
            {
                var gap = cast.Distance(probes.Point(k) + Vec3.UnitZ * raised);
                (least, at) = gap < least ? (gap, raised) : (least, at);
            }
        }

        var isFree = least >= -EntrySlackMm;
        return new Finding(
            "stone-entry", isFree ? Verdict.Pass : Verdict.Fail,
            FormattableString.Invariant($"stone let in from above between the claws as cast, tightest {at:0.00} mm over its seat"),
            least, -EntrySlackMm, "mm",
            "the stone must go in without bending a claw first", Marks.CommonPractice,
            isFree ? "" : "lower setting.seat_fraction, or set the claws further out");
    }
}
