namespace Linewright.Tolerance;

/// <summary>A value below which a share of a lot lies, with the bounds between which the true one lies 19 times in 20.</summary>
/// <param name="Value">In the unit of the lot.</param>
/// <param name="Low">Lower bound.</param>
/// <param name="High">Upper bound.</param>
public sealed record Quantile(double Value, double Low, double High)
{
    /// <summary>Reads a quantile off a lot.</summary>
    /// <param name="sorted">The lot, rising.</param>
    /// <param name="share">0 to 1.</param>
    /// <remarks>
    /// The number of values below the true quantile is binomial, so its bounds are values of the lot itself. Source: David and Nagaraja
    /// (2003), Order Statistics, distribution-free confidence intervals; the binomial taken as normal.
    /// </remarks>
    public static Quantile Of(ReadOnlySpan<double> sorted, double share)
    {
        if (sorted.IsEmpty)
        {
            throw new ArgumentException("a lot has at least one piece", nameof(sorted));
        }

        double n = sorted.Length, half = Chance.Wide * Math.Sqrt(n * share * (1 - share));
        return new Quantile(At(sorted, n * share), At(sorted, Math.Floor(n * share - half)), At(sorted, Math.Ceiling(n * share + half)));
    }

    private static double At(ReadOnlySpan<double> sorted, double rank) => sorted[(int)Math.Clamp(Math.Ceiling(rank) - 1, 0, sorted.Length - 1)];
}
