using Linewright.Brief;
using Linewright.Materials;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>How far walls scatter as a process makes them, and how likely it is that a piece has none under its limit. mm, one standard deviation.</summary>
/// <remarks>
/// A wall lies between two faces of one casting, and each polished face adds what finishing takes unevenly. What the faces of a tree share moves
/// all its walls alike. The limits are for drawings: casting houses ask for them knowing how their castings scatter. So a wall may come out
/// under its limit by a shortfall before the casting is refused: see docs/notes/tolerance.md.
/// </remarks>
/// <param name="SizeMm">Of a size between two faces as cast.</param>
/// <param name="LossMm">Of what finishing takes from a face.</param>
/// <param name="FacesMm">Of where all faces of a tree come to lie together.</param>
/// <param name="Scale">Of a tree's scale, as a part of a length.</param>
/// <param name="StripMm">Of the thickness of rolled strip.</param>
/// <param name="Links">Stone-set links of the line.</param>
/// <param name="PartsPerTree">Most links on one tree; the clasp hangs on the last.</param>
public sealed record WallScatter(double SizeMm, double LossMm, double FacesMm, double Scale, double StripMm, int Links, int PartsPerTree)
{
    // What a reserve is to give, the share that hinges are asked for too: one line in a hundred goes back to the bench. Assumed.
    internal const double Wanted = 0.99;

    // A reserve is written in a brief: hundredths of a millimetre are finer than any pattern.
    private const double StepMm = 0.01;

    // A wall that needs more than this is drawn by hand, not by a reserve: the end of the field's range.
    private const double MostMm = 0.4;

    /// <summary>As a brief's process has it.</summary>
    public static WallScatter Of(ResolvedBrief brief, int links)
    {
        ArgumentNullException.ThrowIfNull(brief);
        var process = brief.Process;
        return new WallScatter(
            process.ToleranceMm,
            process.FinishSpreadUm / 1000,
            process.CommonSpreadUm / 1000,
            process.ScaleSpreadPercent / 100,
            MaterialTables.Fits.Find("rolled-strip").SpreadMm,
            links,
            process.PartsPerTree);
    }

    /// <summary>Of one wall, on its own.</summary>
    public double OwnMm(WallReading wall)
    {
        ArgumentNullException.ThrowIfNull(wall);
        return wall.IsRolled ? StripMm : Math.Sqrt(SizeMm * SizeMm + wall.PolishedFaces * LossMm * LossMm);
    }

    /// <summary>Of one wall, with all others of its tree.</summary>
    public double SharedMm(WallReading wall)
    {
        ArgumentNullException.ThrowIfNull(wall);
        return wall.IsRolled ? 0 : 2 * FacesMm;
    }

    /// <summary>Probability that no wall of a piece comes out further under its limit than a shortfall.</summary>
    /// <param name="walls">Walls as cast.</param>
    /// <param name="shortfallMm">0 holds them to their limits.</param>
    /// <param name="thickerMm">How much thicker than read they are all drawn.</param>
    /// <remarks>
    /// Given what a tree shares all walls are independent, so their probabilities multiply; the shared part is then averaged out by the
    /// trapezoidal rule, as in <see cref="RunningFit"/>. The scale of the tree is so small on a wall that it counts as its own.
    /// </remarks>
    public double NoneUnder(IReadOnlyCollection<WallReading> walls, double shortfallMm, double thickerMm = 0)
    {
        ArgumentNullException.ThrowIfNull(walls);
        Guard.InRange(shortfallMm, 0, 10);
        Guard.InRange(thickerMm, 0, 10);
        var trees = (Links + PartsPerTree - 1) / PartsPerTree;
        var probability = 1.0;
        for (var tree = 0; tree < trees; tree++)
        {
            var hung = Math.Min(PartsPerTree, Links - tree * PartsPerTree);
            var here = walls
                .Select(wall => (Wall: wall, Count: wall.Count == Links ? hung : tree == trees - 1 ? wall.Count : 0))
                .Where(entry => entry.Count > 0)
                .Select(entry => new Entry(
                    entry.Wall.ThicknessMm + thickerMm - entry.Wall.LimitMm + shortfallMm,
                    RunningFit.SigmaMm(OwnMm(entry.Wall), entry.Wall.IsRolled ? 0 : Scale * entry.Wall.ThicknessMm),
                    SharedMm(entry.Wall),
                    entry.Count))
                .ToList();
            probability *= OnOneTree(here);
        }

        return probability;
    }

    /// <summary>The reserve by which the wanted share of pieces has no wall further under its limit than a shortfall; hundredths of a mm, rounded up.</summary>
    /// <param name="walls">Walls as cast.</param>
    /// <param name="shortfallMm">0 holds them to their limits.</param>
    /// <param name="drawnMm">The reserve that they are drawn with; the answer is no less.</param>
    /// <returns>Null where no reserve that a brief may name would do.</returns>
    public double? ReserveMm(IReadOnlyCollection<WallReading> walls, double shortfallMm, double drawnMm = 0)
    {
        for (var steps = 0; drawnMm + steps * StepMm <= MostMm + 1e-9; steps++)
        {
            if (NoneUnder(walls, shortfallMm, steps * StepMm) >= Wanted)
            {
                return steps == 0 ? drawnMm : Math.Round(drawnMm + steps * StepMm, 9);
            }
        }

        return null;
    }

    private static double OnOneTree(List<Entry> walls)
    {
        // A bell is summed finely enough at a tenth of its width: the product is no steeper than a wall's own spread, which is wider.
        const double end = 8.5, step = 0.1;
        double sum = 0, weights = 0;
        for (var z = -end; z <= end; z += step)
        {
            double weight = Math.Exp(-z * z / 2), all = 1;
            foreach (var wall in walls)
            {
                all *= Math.Pow(1 - RunningFit.OneBinds(wall.RoomMm + wall.SharedMm * z, wall.OwnMm), wall.Count);
            }

            sum += weight * all;
            weights += weight;
        }

        return sum / weights;
    }

    private readonly record struct Entry(double RoomMm, double OwnMm, double SharedMm, int Count);
}
