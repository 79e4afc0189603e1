using System.Collections.Immutable;
using Linewright.Checks;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Tolerance;

/// <summary>Reads a piece as a line that varies: sizes off its solids by the calipers of the checks, spreads off its brief.</summary>
public static class LineVariations
{
    /// <summary>The line of a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="walls">Its walls, as the wall check measured them.</param>
    public static LineVariation Of(Piece piece, ImmutableArray<WallReading> walls)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var (brief, clasp) = (piece.Design.Brief, piece.Clasp);
        var process = brief.Process;
        var (bore, side) = RunningCheck.Clearances(piece);
        var box = clasp.MouthMm - clasp.LipMm;
        return new LineVariation
        {
            Links = piece.Layout.Count,
            LinksPerTree = process.PartsPerTree,
            LinkMm = piece.Layout.PitchMm - bore / 2,
            BoxMm = box,
            TongueMm = piece.Layout.ClaspMm - box - bore / 2,
            BoreMm = bore,
            SideMm = side,
            Clasp = ClaspOf(piece),
            Walls = WallReading.AsCast(walls),
            ShortfallMm = process.WallShortfallMm,
            ReserveMm = process.WallReserveMm,
            ScaleSpread = process.ScaleSpreadPercent / 100,
            FacesSpreadMm = process.CommonSpreadUm / 1000,
            SizeSpreadMm = process.ToleranceMm,
            Joint = JointSpread.Of(brief, piece.Hinge.Kind),
            LossSpreadMm = process.FinishSpreadUm / 1000,
        };
    }

    private static ClaspVariation ClaspOf(Piece piece)
    {
        var clasp = piece.Clasp;
        var (box, tongue) = (piece[PartRole.Box].AsSet, piece[PartRole.Tongue].AsSet);
        var overlap = CatchCheck.BehindLip(clasp, box, tongue, CatchCheck.ShoulderY(clasp));
        var slides = CatchCheck.Slides(clasp, box, tongue).ToDictionary(slide => slide.Where, slide => slide.Gap, StringComparer.Ordinal);
        var floor = slides["strip to floor"];
        var underLip = clasp.RoofMm - clasp.LipDropMm - (clasp.LowerLeafMm + 2 * clasp.StripMm + clasp.FoldGapMm);
        return new ClaspVariation(
            2 * slides["strip to side wall"],
            floor + underLip,
            clasp.PressMm - overlap,
            overlap,
            CatchCheck.LeastGapMm,
            CatchCheck.LeastOverlapMm,
            JointSpread.FiledShare,
            MaterialTables.Fits.Find("rolled-strip").SpreadMm,
            MaterialTables.Fits.Find("bent-strip").SpreadMm);
    }
}
