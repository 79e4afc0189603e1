namespace Linewright.Quote;

/// <summary>A price that the quote needs and the list does not have. It is never taken as zero.</summary>
/// <param name="Path">Where it belongs in the price list: metal.alloys.</param>
/// <param name="Needed">What to write there, and what it is needed for.</param>
public sealed record MissingPrice(string Path, string Needed);
