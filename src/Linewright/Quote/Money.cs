using System.Globalization;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>An amount in a currency. Sums and products stay unrounded; only the last line of a quote is rounded, once.</summary>
/// <remarks>
/// Half a smallest unit is rounded up, not to the even neighbour. Source: Council Regulation (EC) 1103/97, article 5, for sums
/// in euro: exactly half-way is rounded up; from memory. Elsewhere common practice. Standard: ISO 4217 for the decimals.
/// </remarks>
/// <param name="Amount">In whole units, euros and not cents.</param>
/// <param name="Currency">The currency.</param>
public readonly record struct Money(decimal Amount, Currency Currency)
{
    /// <summary>The sum that is owed: to the currency's smallest unit, half a unit upwards.</summary>
    public Money Rounded() => this with { Amount = decimal.Round(Amount, Currency.MinorDigits, MidpointRounding.AwayFromZero) };

    /// <summary>4364.02 EUR: with all decimals of the smallest unit.</summary>
    public override string ToString()
        => Amount.ToString("F" + Currency.MinorDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " " + Currency.Key;
}
