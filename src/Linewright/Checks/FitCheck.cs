using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Does the line close to the length asked for, and whom does it fit.</summary>
/// <remarks>Read off the placements of the parts, not off the numbers that placed them.</remarks>
internal sealed class FitCheck : ICheck
{
    // Ease on a line bracelet, inside circumference less girth. Common practice: snug 5, comfort 10 to 15, loose 25 and more.
    private const double SnugMm = 5, ComfortLowMm = 10, ComfortHighMm = 15, LooseMm = 32;

    // Sums of some hundred doubles of this size are good to a thousandth of it.
    private const double ExactMm = 1e-9;

    // Trade lengths: laid flat with the clasp. Source: sizing guides of the trade, which differ by half a size.
    private static readonly (string Label, double LengthMm)[] Labels =
    [
        ("XS", 152.4), ("S", 165.1), ("M", 177.8), ("M/L", 190.5), ("L", 203.2), ("XL", 215.9), ("XXL", 228.6),
    ];

    private static readonly CheckRule Closes = new("closes", "mm", "laid flat, closed and taut, through the hinge axes", Marks.Asked);
    private static readonly CheckRule Ring = new("closed-ring", "mm", "round the wrist the last hinge lies in the first", Marks.Calculated);
    private static readonly CheckRule Fit = new("fit", "mm", "ease of a line bracelet: snug 5, comfort 10 to 15, loose from 25", Marks.CommonPractice);
    private static readonly CheckRule Turn = new("wrist-turn", "deg", "links of this pitch turn 5 to 15 on a wrist; 25 is a tight curve", Marks.CommonPractice);
    private static readonly CheckRule Label = new("size-label", "mm", "the nearest trade length, laid flat with the clasp", Marks.SourceRead);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var (piece, brief) = (model.Piece, model.Piece.Design.Brief);
        var length = FlatLength(model);
        yield return Closing(length, piece);

        if (ClaspCheck.FitOf(piece) is not { } fit)
        {
            yield return Ring.Note(Verdict.Fail, "the line is too short to go round", "a longer line");
            yield break;
        }

        var open = RingGap(model);
        yield return Ring.AtMost("from the last hinge to the first", open, 1e-6, 1e-6, "a fault of the assembly");

        var inside = fit.InsideCircumferenceMm;
        if (brief.Length is { WristMm: { } wrist, EaseMm: { } ease })
        {
            yield return Fit.Between(
                FormattableString.Invariant($"inside {inside:0.0} on a wrist of {wrist:0.0}, ease {ease:0.0} asked"),
                inside - wrist, SnugMm, Math.Max(20, ease + 1), 0, LooseMm + ease, "change length.ease_mm: 10 to 15 is worn with comfort");
        }
        else
        {
            yield return Fit.Says(
                Verdict.Pass, FormattableString.Invariant($"inside circumference; suits a wrist of {inside - ComfortHighMm:0} to {inside - ComfortLowMm:0}, snug on {inside - SnugMm:0}"), inside, null, "");
        }

        var turn = fit.LargestHingeAngleDeg;
        yield return Turn.AtMost("largest turn of a hinge on the wrist's form", turn, 25, 35, "a shorter clasp or smaller stones: long pieces turn far at their ends");

        var (label, trade) = Labels.MinBy(row => Math.Abs(row.LengthMm - length));
        yield return Label.Says(
            Verdict.Pass, Math.Abs(trade - length) <= 6.4 ? $"trade length {label}" : "no usual bracelet length", length, trade, "");
    }

    /// <summary>A measured length against the one asked for.</summary>
    internal static Finding Closing(double length, Piece piece)
    {
        var asked = piece.Design.Brief.Length.LaidFlatMm ?? piece.Layout.LaidFlatMm;
        var closes = Math.Abs(length - asked) <= ExactMm;
        return Closes.Says(
            closes ? Verdict.Pass : Verdict.Fail,
            FormattableString.Invariant($"{piece.Layout.Count} links of {piece.Layout.PitchMm:0.000} and a clasp of {piece.Layout.ClaspMm:0.000}"),
            length,
            asked,
            closes ? "" : "a fault of the layout: choose another candidate");
    }

    /// <summary>From the first link's bar axis to the tongue's eye axis, links and clasp laid in a row, every joint's axes compared on the way.</summary>
    internal static double FlatLength(PieceModel model)
    {
        var piece = model.Piece;
        var links = model.Flat.Of(PartRole.Link);
        var box = model.Flat.Of(PartRole.Box)[0];
        var tongue = model.Flat.Of(PartRole.Tongue)[0];
        var first = links[0].Point(piece.Link.BarAxis);
        var last = tongue.Point(new Vec3(piece.Clasp.LengthMm, 0, piece.Hinge.HeightMm));

        // Broken joints would make the distance of the ends meaningless: their gaps are added.
        var broken = 0.0;
        for (var i = 0; i < links.Length; i++)
        {
            var next = i + 1 < links.Length ? links[i + 1].Point(piece.Link.BarAxis) : box.Point(new Vec3(0, 0, piece.Hinge.HeightMm));
            var gap = (links[i].Point(piece.Link.NextBarAxis) - next).Length;
            broken += gap > ExactMm ? gap : 0;
        }

        return (last - first).Length + broken;
    }

    /// <summary>On the wrist: from the tongue's eye axis to the first link's bar.</summary>
    internal static double RingGap(PieceModel model)
    {
        var piece = model.Piece;
        var first = model.Closed.Of(PartRole.Link)[0].Point(piece.Link.BarAxis);
        return (model.Closed.Of(PartRole.Tongue)[0].Point(new Vec3(piece.Clasp.LengthMm, 0, piece.Hinge.HeightMm)) - first).Length;
    }
}
