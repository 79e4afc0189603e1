namespace Linewright.Layout;

/// <summary>Roots of continuous functions of one variable.</summary>
internal static class Roots
{
    private const int MostSteps = 200;

    /// <summary>A root between two places where the function has different signs, to the grain of a double.</summary>
    /// <param name="function">Continuous between the ends.</param>
    /// <param name="low">One end.</param>
    /// <param name="high">The other.</param>
    /// <param name="tolerance">Stops when the root is enclosed this tightly.</param>
    /// <remarks>
    /// Source: Chandrupatla (1997), A new hybrid quadratic/bisection algorithm, Advances in Engineering Software 28(3).
    /// Where the signs agree the end with the smaller value comes back: callers bracket first.
    /// </remarks>
    public static double Between(Func<double, double> function, double low, double high, double tolerance)
    {
        double b = low, a = high, fb = function(b), fa = function(a), c = a, fc = fa, share = 0.5;
        for (var step = 0; step < MostSteps; step++)
        {
            // Try the share of the enclosure that the last parabola, or halving, suggests.
            double x = a + share * (b - a), fx = function(x);
            if (Math.Sign(fx) == Math.Sign(fa))
            {
                (c, fc) = (a, fa);
            }
            else
            {
                (c, b, fc, fb) = (b, a, fb, fa);
            }

            (a, fa) = (x, fx);
            var (best, value) = Math.Abs(fb) < Math.Abs(fa) ? (b, fb) : (a, fa);
            var width = Math.Abs(b - a);
            var grain = (2 * double.BitIncrement(1) - 2) * Math.Abs(best) + tolerance / 2;
            if (value == 0 || width <= 2 * grain)
            {
                return best;
            }

            // Inverse parabola where it is monotonic inside, halving otherwise.
            double xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
            share = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
                ? fa / (fb - fa) * (fc / (fb - fc)) + (c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb))
                : 0.5;
            var least = grain / width;
            share = Math.Clamp(share, least, 1 - least);
        }

        return a;
    }
}
