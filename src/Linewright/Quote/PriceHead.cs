namespace Linewright.Quote;

/// <summary>The head of the price list behind a quote, in its own words.</summary>
/// <param name="Name">Whose prices.</param>
/// <param name="Date">The day of the prices.</param>
/// <param name="ValidUntil">The last day on which a quote is meant to hold; null where the list does not say.</param>
/// <param name="Validity">Words on that; empty where there are none.</param>
/// <param name="Note">What the shop wants printed.</param>
/// <param name="Currency">ISO 4217.</param>
/// <param name="TaxName">What the tax is called; null where the list does not say.</param>
/// <param name="TaxPercent">Of the price before it; null where the list does not say.</param>
public sealed record PriceHead(string Name, DateOnly Date, DateOnly? ValidUntil, string Validity, string Note, string Currency, string? TaxName, decimal? TaxPercent)
{
    /// <summary>Of a list.</summary>
    public static PriceHead Of(PriceList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        return new PriceHead(list.Name, list.Date, list.ValidUntil, list.Validity, list.Note, list.Currency.Key, list.TaxName, list.TaxPercent);
    }
}
