namespace Linewright.Layout;

/// <summary>Integrals of smooth functions over an interval.</summary>
internal static class Quadrature
{
    // Halving an interval so often passes the grain of a double.
    private const int DeepestSplit = 40;

    /// <summary>Adaptive rule of Simpson with its end correction.</summary>
    /// <param name="function">What to integrate.</param>
    /// <param name="from">Lower end.</param>
    /// <param name="to">Upper end.</param>
    /// <param name="tolerance">Absolute error allowed.</param>
    /// <remarks>Source: Lyness (1969), Notes on the adaptive Simpson quadrature routine, J. ACM 16(3).</remarks>
    public static double Integrate(Func<double, double> function, double from, double to, double tolerance)
    {
        double low = function(from), high = function(to), middle = function((from + to) / 2);
        return Split(function, from, to, low, middle, high, (to - from) / 6 * (low + 4 * middle + high), tolerance, DeepestSplit);
    }

    private static double Split(
        Func<double, double> function, double from, double to, double low, double middle, double high, double whole, double tolerance, int left)
    {
        var half = (from + to) / 2;
        double lowMiddle = function((from + half) / 2), highMiddle = function((half + to) / 2);
        double first = (half - from) / 6 * (low + 4 * lowMiddle + middle), second = (to - half) / 6 * (middle + 4 * highMiddle + high);
        var change = first + second - whole;
        if (left == 0 || Math.Abs(change) <= 15 * tolerance)
        {
            return first + second + change / 15;
        }

        return Split(function, from, half, low, lowMiddle, middle, first, tolerance / 2, left - 1)
            + Split(function, half, to, middle, highMiddle, high, second, tolerance / 2, left - 1);
    }
}
