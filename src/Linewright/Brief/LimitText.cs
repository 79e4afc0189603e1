using System.Globalization;

namespace Linewright.Brief;

/// <summary>Numbers for advice: rounded to the side that works, so that whoever does as they are told is not refused again.</summary>
internal static class LimitText
{
    // A double of some hundred millimetres is sure to about this many decimals.
    private const int MostDecimals = 9;

    // What arithmetic leaves of a decimal number: 0.36 that came out as 0.36000000000000004 is still 0.36.
    private const double Hair = 1e-11;

    /// <summary>A least value: rounded up.</summary>
    /// <param name="value">The exact limit.</param>
    /// <param name="decimals">How many decimals a designer wants to read.</param>
    /// <param name="room">How far beyond the limit still works; where it is less than the rounding, more decimals are given.</param>
    public static string AtLeast(double value, int decimals, double room = double.PositiveInfinity) => Text(value, decimals, room, Math.Ceiling, -Hair);

    /// <summary>A most value: rounded down.</summary>
    /// <param name="value">The exact limit.</param>
    /// <param name="decimals">How many decimals a designer wants to read.</param>
    /// <param name="room">How far below the limit still works; where it is less than the rounding, more decimals are given.</param>
    public static string AtMost(double value, int decimals, double room = double.PositiveInfinity) => Text(value, decimals, room, Math.Floor, Hair);

    private static string Text(double value, int decimals, double room, Func<double, double> round, double hair)
    {
        for (var count = decimals; ; count++)
        {
            var scale = Math.Pow(10, count);
            var rounded = round((value + hair) * scale) / scale;
            if (Math.Abs(rounded - value) <= Math.Max(room, Hair) || count >= MostDecimals)
            {
                return rounded.ToString("F" + count.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            }
        }
    }
}
