using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Checks;

/// <summary>How the stone is held: claws, their cover and bearings, the room under the culet and the way in, all read off the solids.</summary>
internal sealed class SettingCheck : ICheck
{
    // Source: casting houses' rules: a claw as cast. Read.
    private const double LeastCastClawMm = 0.6;

    // Claw's top over the girdle as a share of the crown's height: benchmarks run from 70 to 100 %. Source: setters' criteria, read.
    private const double LeastTopShare = 0.7, MostTopShare = 1.1;

    // Source: a setter's textbook article, read: half of the claw must remain at the heel.
    private const double LeastHeelShare = 0.5;

    // A table is a custom, not a law: this much outside it passes. Assumed: a polisher's stroke.
    private const double TableSlackMm = 0.03;

    private const int Claws = 4;

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var piece = model.Piece;
        var (link, form) = (piece[PartRole.Link], piece.Link);
        var table = ClawTable.For(form.StoneMm);
        var set = ClawProfile.Read(link.AsSet, piece.SeatedStone, form);
        var cast = ClawProfile.Read(link.AsCast, piece.SeatedStone, form);
        yield return Diameter(set.DiameterMm, table);
        yield return CastDiameter(cast.DiameterMm);
        yield return Cover(set.CoverMm, table);
        yield return Height(piece, set);
        yield return Heel(set);
        stop.ThrowIfCancellationRequested();
        yield return Bearing(BearingContact.Read(model));
    }

    private static Finding Diameter(double measured, ClawTable table)
    {
        var (isThin, isThick) = (measured < table.LeastMm - TableSlackMm, measured > table.MostMm + TableSlackMm);
        return new Finding(
            "claw-diameter",
            isThin ? Verdict.Fail : isThick ? Verdict.Caution : Verdict.Pass,
            "claw below the girdle, finished",
            measured, isThick ? table.MostMm : table.LeastMm, "mm",
            FormattableString.Invariant($"claws for this size of stone are {table.LeastMm:0.00} to {table.MostMm:0.00}"),
            Marks.CommonPractice,
            isThin ? "raise setting.claw_mm" : isThick ? "lower setting.claw_mm" : "");
    }

    private static Finding CastDiameter(double measured)
    {
        var isThick = measured >= LeastCastClawMm;
        return new Finding(
            "claw-as-cast", isThick ? Verdict.Pass : Verdict.Fail, "claw below the girdle, as cast", measured, LeastCastClawMm, "mm",
            "a claw must fill when it is cast", Marks.SourceRead, isThick ? "" : "raise setting.claw_mm or process.finish_loss_mm");
    }

    private static Finding Cover(double measured, ClawTable table)
    {
        var (isShort, isLong) = (measured < table.LeastCoverMm - TableSlackMm, measured > table.MostCoverMm + TableSlackMm);
        return new Finding(
            "claw-cover",
            isShort ? Verdict.Fail : isLong ? Verdict.Caution : Verdict.Pass,
            "tip over the crown, towards the axis",
            measured, isLong ? table.MostCoverMm : table.LeastCoverMm, "mm",
            FormattableString.Invariant($"cover for this size of stone is {table.LeastCoverMm:0.00} to {table.MostCoverMm:0.00}"),
            Marks.CommonPractice,
            isShort ? "raise setting.cover_mm" : isLong ? "lower setting.cover_mm" : "");
    }

    private static Finding Height(Piece piece, ClawProfile claw)
    {
        var girdle = piece.Link.GirdleHeightMm + piece.Stone.GirdleHalfMm;
        var share = 100 * (claw.TopMm - girdle) / piece.Stone.CrownHeightMm;
        var (isLow, isHigh) = (share < 100 * LeastTopShare, share > 100 * MostTopShare);
        return new Finding(
            "claw-height",
            isLow || isHigh ? Verdict.Caution : Verdict.Pass,
            "claw's top over the girdle, as a part of the crown",
            share, 100 * (isHigh ? MostTopShare : LeastTopShare), "%",
            "70 to 110 % of the way from girdle to table",
            Marks.SourceRead,
            isLow ? "raise setting.cover_mm or setting.claw_mm" : isHigh ? "lower setting.claw_mm or setting.cover_mm" : "");
    }

    private static Finding Heel(ClawProfile claw)
    {
        var share = 100 * claw.HeelShare;
        var isLeft = share >= 100 * LeastHeelShare - 0.5;
        return new Finding(
            "seat-depth", isLeft ? Verdict.Pass : Verdict.Fail,
            FormattableString.Invariant($"{claw.HeelMm:0.00} mm of the claw's {claw.DiameterMm:0.00} left behind the bearing, at the girdle"),
            share, 100 * LeastHeelShare, "%",
            "half of the claw must remain at the heel", Marks.SourceRead, isLeft ? "" : "lower setting.seat_fraction");
    }

    private static Finding Bearing(BearingContact contact)
    {
        var isHeld = contact.Carrying == Claws;
        return new Finding(
            "bearing-contact", isHeld ? Verdict.Pass : Verdict.Fail,
            FormattableString.Invariant(
                $"claws that hold the stone from below and above; {contact.BelowMm2.Sum():0.000} mm2 under the girdle, {contact.AboveMm2.Sum():0.000} over it"),
            contact.Carrying, Claws, "",
            "every claw must carry", Marks.CommonPractice, isHeld ? "" : "raise setting.seat_fraction or setting.cover_mm");
    }
}
