using System.Globalization;

namespace Linewright.Sheets;

/// <summary>How numbers stand on a sheet: a point, two places for lengths, no thousands.</summary>
internal static class Figures
{
    /// <summary>A length, mm, to a hundredth.</summary>
    public static string Mm(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>A length, mm, to a thousandth: what is multiplied by the count of links.</summary>
    public static string Fine(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);

    /// <summary>What stands before a count, to a thousandth or finer: whoever multiplies the two finds the product as it is, to a hundredth.</summary>
    public static string Factor(double value, int count)
    {
        var places = 3;
        while (places < 7 && Mm(Math.Round(value, places) * count) != Mm(value * count))
        {
            places++;
        }

        return value.ToString("F" + Count(places), CultureInfo.InvariantCulture);
    }

    /// <summary>A diameter.</summary>
    public static string Dia(double value) => "\u00d8" + Mm(value);

    /// <summary>A radius.</summary>
    public static string Radius(double value) => "R" + Mm(value);

    /// <summary>An angle in degrees, to a tenth, from radians.</summary>
    public static string Angle(double radians) => double.RadiansToDegrees(radians).ToString("0.0", CultureInfo.InvariantCulture) + "\u00b0";

    /// <summary>Any number with so many places at most.</summary>
    public static string Number(double value, int places = 2) => value.ToString(places == 0 ? "0" : "0." + new string('#', places), CultureInfo.InvariantCulture);

    /// <summary>A count.</summary>
    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);
}
