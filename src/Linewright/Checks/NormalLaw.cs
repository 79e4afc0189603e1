namespace Linewright.Checks;

/// <summary>The normal distribution, for tolerances that are the sum of many small errors.</summary>
public static class NormalLaw
{
    // Below 2 the series needs at most 40 terms and loses no more than two digits to 1 - erf; above, the fraction is short.
    private const double SeriesBelow = 2;
    private const int FractionTerms = 120;

    /// <summary>The complementary error function, to 1e-13 of its value, for any number.</summary>
    /// <remarks>
    /// Source: Abramowitz and Stegun (1964), Handbook of Mathematical Functions, 7.1.6 (series of positive terms) and
    /// 7.1.14 (continued fraction).
    /// </remarks>
    public static double Erfc(double x)
    {
        if (double.IsNaN(x))
        {
            return x;
        }

        if (x < 0)
        {
            return 2 - Erfc(-x);
        }

        if (x < SeriesBelow)
        {
            double term = x, sum = x;
            for (var n = 1; term > 1e-18 * sum; n++)
            {
                term *= 2 * x * x / (2 * n + 1);
                sum += term;
            }

            return 1 - 2 / Math.Sqrt(Math.PI) * Math.Exp(-x * x) * sum;
        }

        // Evaluated from the far end; 120 levels are exact in double from 2 upwards.
        var below = x;
        for (var n = FractionTerms; n >= 1; n--)
        {
            below = x + n / 2.0 / below;
        }

        return Math.Exp(-x * x) / (Math.Sqrt(Math.PI) * below);
    }

    /// <summary>Probability that a normal variable lies more than so many standard deviations above its mean.</summary>
    public static double Above(double deviations) => Erfc(deviations / Math.Sqrt(2)) / 2;
}
