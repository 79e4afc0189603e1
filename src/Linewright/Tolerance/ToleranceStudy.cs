using System.Collections.Immutable;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Tolerance;

/// <summary>Front door of the room: draws a lot of pieces as the process scatters them, and says how they come out.</summary>
public static class ToleranceStudy
{
    /// <summary>Pieces drawn where nobody asks for another number: the error of a share is then at most 1 %.</summary>
    public const int UsualPieces = 10_000;

    /// <summary>Most pieces that a study draws.</summary>
    public const int MostPieces = 1_000_000;

    /// <summary>The lot that is drawn where nobody asks for another.</summary>
    public const long UsualSeed = 1;

    // What a solved gap or wall is to give. Common practice: one line in a hundred goes back to the bench.
    private const double Wanted = WallScatter.Wanted;

    private static readonly ImmutableArray<string> Notes =
    [
        "Every size is taken as normal and as centred on its nominal: a drift of a printer, a mould or a hand must be set right first.",
        "A joint that binds is fitted by hand in a minute; the share that runs free counts pieces that need no such fitting.",
        "A wall's limit is one for drawings: casting houses ask for it knowing how their castings scatter. One under it is thin, not broken; it is refused from process.wall_shortfall_mm under it.",
        "Claw tips, rims of bearings and the tongue's strip are made and gauged at the bench: a casting's scatter does not decide them, and they are not counted.",
        "Warped links, porosity, missing claws and slips of the torch are not in the figures.",
    ];

    /// <summary>Studies a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="findings">Findings that hold those of the wall check; without them no wall is studied.</param>
    /// <param name="pieces">How many to draw, 100 to <see cref="MostPieces"/>.</param>
    /// <param name="seed">Which lot; 0 or more.</param>
    /// <param name="stop">Asks to stop.</param>
    public static ToleranceReport Of(
        Piece piece, IReadOnlyList<Finding> findings, int pieces = UsualPieces, long seed = UsualSeed, CancellationToken stop = default)
        => Of(LineVariations.Of(piece, WallReading.Of(piece, findings)), pieces, seed, stop);

    /// <summary>Studies a line given as numbers.</summary>
    /// <param name="line">The line.</param>
    /// <param name="pieces">How many to draw, 100 to <see cref="MostPieces"/>.</param>
    /// <param name="seed">Which lot; 0 or more.</param>
    /// <param name="stop">Asks to stop.</param>
    public static ToleranceReport Of(LineVariation line, int pieces = UsualPieces, long seed = UsualSeed, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(line);
        Guard.InRange(pieces, 100, MostPieces);
        Guard.InRange(seed, 0, long.MaxValue);
        var lot = LotDraw.Of(line.Checked(), pieces, (ulong)seed, stop);
        var walls = WallsOf(line, lot);
        var sensitivity = Sensitivities.Of(line, lot, walls);
        return new ToleranceReport(
            pieces,
            seed,
            line.Trees,
            LengthOf(line, lot),
            Share(lot, PieceFate.Free, FreeByIntegral(line)),
            Share(lot, PieceFate.Closes),
            Share(lot, PieceFate.Holds),
            Share(lot, PieceFate.Good),
            Share(lot, PieceFate.Walls, line.WallScatter.NoneUnder(line.Walls, 0)),
            Share(lot, PieceFate.Accepted, line.WallScatter.NoneUnder(line.Walls, line.ShortfallMm)),
            GapOf(line, lot),
            sensitivity,
            sensitivity[0].YieldGainPercent > 0 ? sensitivity[0].Tolerance : null,
            sensitivity.MaxBy(row => row.LengthSharePercent)!.Tolerance,
            walls,
            WallReserves.Reckoned(line),
            Notes);
    }

    /// <summary>Standard deviation of the closed length by the stack-up of independent normals, mm.</summary>
    /// <remarks>
    /// Source: JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 5.1.2: variances of independent terms add, each times
    /// the square of what a unit of it does. From memory.
    /// </remarks>
    public static double LengthDeviationMm(LineVariation line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var shared = 0.0;
        for (var tree = 0; tree < line.Trees; tree++)
        {
            var links = Math.Min(line.LinksPerTree, line.Links - tree * line.LinksPerTree);
            var hangs = links * line.LinkMm + (tree == line.Trees - 1 ? line.BoxMm + line.TongueMm : 0);
            shared += Math.Pow(line.ScaleSpread * hangs, 2);
        }

        return Math.Sqrt(shared
            + line.Links * Math.Pow(line.CentresSpreadMm, 2)
            + 2 * Math.Pow(line.CentreToFaceSpreadMm, 2)
            + line.Joints * Math.Pow(line.Joint.BoreMm / 2, 2));
    }

    // Bores and sides scatter on their own, so their shares multiply; the integral holds for one tree.
    private static double? FreeByIntegral(LineVariation line) => line.Trees > 1
        ? null
        : RunningFit.AllRunFree(line.Joints, line.BoreMm, line.Joint.BoreMm, JointSpread.LeastClearanceMm)
            * RunningFit.AllRunFree(line.Joints, line.SideMm, line.Joint.SideMm, JointSpread.LeastClearanceMm, line.Joint.SideSharedMm);

    private static Chance Share(LotDraw lot, PieceFate fate, double? closedForm = null)
        => Chance.Of(lot.Fates.Count(met => (met & fate) == fate), lot.Fates.Length, closedForm);

    private static LengthSpread LengthOf(LineVariation line, LotDraw lot)
    {
        var mean = lot.Length.Average();
        var deviation = Math.Sqrt(lot.Length.Sum(length => (length - mean) * (length - mean)) / (lot.Length.Length - 1));
        var sorted = Sorted(lot.Length);
        return new LengthSpread(
            line.LaidFlatMm,
            mean,
            Chance.Wide * deviation / Math.Sqrt(lot.Length.Length),
            deviation,
            LengthDeviationMm(line),
            Quantile.Of(sorted, 0.05),
            Quantile.Of(sorted, 0.95));
    }

    private static HingeGap GapOf(LineVariation line, LotDraw lot)
    {
        // The gap that lifts the right share of the tightest joints over the least clearance.
        var each = Math.Sqrt(Wanted);
        Quantile bore = Gap(lot.LeastBore, 1), side = Gap(lot.LeastSide, 0.5);
        var free = 0;
        for (var piece = 0; piece < lot.Fates.Length; piece++)
        {
            free += bore.Value + lot.LeastBore[piece] >= JointSpread.LeastClearanceMm && 2 * side.Value + lot.LeastSide[piece] >= JointSpread.LeastClearanceMm ? 1 : 0;
        }

        return new HingeGap(
            100 * Wanted,
            bore,
            RunningFit.ClearanceForMm(line.Joints, line.Joint.BoreMm, each, JointSpread.LeastClearanceMm),
            side,
            line.Trees > 1 ? null : RunningFit.ClearanceForMm(line.Joints, line.Joint.SideMm, each, JointSpread.LeastClearanceMm, line.Joint.SideSharedMm) / 2,
            Chance.Of(free, lot.Fates.Length));

        Quantile Gap(double[] tightest, double factor)
        {
            var needed = new double[tightest.Length];
            for (var i = 0; i < needed.Length; i++)
            {
                needed[i] = factor * (JointSpread.LeastClearanceMm - tightest[i]);
            }

            return Quantile.Of(Sorted(needed), each);
        }
    }

    private static List<WallSpread> WallsOf(LineVariation line, LotDraw lot)
    {
        var walls = new List<WallSpread>();
        for (var i = 0; i < line.Walls.Length; i++)
        {
            var wall = line.Walls[i];
            var pieces = lot.Under[i].Length;
            var clean = lot.Under[i].Count(under => under == 0);
            if (clean < pieces)
            {
                var thinnest = Sorted(lot.Thinnest[i]);
                walls.Add(new WallSpread(
                    wall.Part, wall.Feature, wall.Count, wall.ThicknessMm, wall.LimitMm, line.WallSpreadMm(wall),
                    (double)lot.Under[i].Sum() / pieces, 100.0 * clean / pieces,
                    Quantile.Of(thinnest, 0.05).Value, wall.ThicknessMm + wall.LimitMm - Quantile.Of(thinnest, 1 - Wanted).Value));
            }
        }

        // Most often first; where two are alike, in the order of the parts.
        return [.. walls.OrderBy(wall => wall.NonePercent).ThenByDescending(wall => wall.UnderEach)];
    }

    private static double[] Sorted(double[] values)
    {
        var sorted = (double[])values.Clone();
        Array.Sort(sorted);
        return sorted;
    }
}
