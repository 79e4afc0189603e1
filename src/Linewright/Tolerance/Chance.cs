using Linewright.Solids.Space;

namespace Linewright.Tolerance;

/// <summary>How many of a lot came out well, in %, with the bounds between which the true share lies 19 times in 20.</summary>
/// <param name="Percent">Counted.</param>
/// <param name="LowPercent">Lower bound.</param>
/// <param name="HighPercent">Upper bound.</param>
/// <param name="ClosedFormPercent">The same by integral where there is one; null where there is none.</param>
public sealed record Chance(double Percent, double LowPercent, double HighPercent, double? ClosedFormPercent = null)
{
    /// <summary>Deviations of the normal law that hold 95 %. Calculated.</summary>
    internal const double Wide = 1.959963984540054;

    /// <summary>Counts a lot.</summary>
    /// <remarks>Source: Wilson (1927), J. Am. Stat. Assoc. 22, 209, score interval; it keeps within 0 and 100 % and is right near both.</remarks>
    public static Chance Of(int well, int lot, double? closedForm = null)
    {
        Guard.InRange(lot, 1, int.MaxValue);
        Guard.InRange(well, 0, lot);
        double n = lot, share = well / n, z = Wide * Wide;
        var middle = (share + z / (2 * n)) / (1 + z / n);
        var half = Wide / (1 + z / n) * Math.Sqrt(share * (1 - share) / n + z / (4 * n * n));
        return new Chance(
            100 * share,
            well == 0 ? 0 : 100 * Math.Max(0, middle - half),
            well == lot ? 100 : 100 * Math.Min(1, middle + half),
            100 * closedForm);
    }
}
