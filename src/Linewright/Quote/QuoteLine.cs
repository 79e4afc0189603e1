namespace Linewright.Quote;

/// <summary>One line of a quote: an amount that anybody can work out again, unrounded.</summary>
/// <param name="Group">What it pays for.</param>
/// <param name="What">In the workshop's words.</param>
/// <param name="Quantity">How much of it; below zero where something comes back.</param>
/// <param name="Unit">g, ct, min, %, or what is counted.</param>
/// <param name="UnitPrice">Price of a unit; under a percentage the sum that it is taken of.</param>
/// <param name="Per">What the unit price is for: 1; 60 where minutes are paid by the hour; 100 under a percentage.</param>
/// <param name="Amount">Quantity x unit price / per, in the list's currency, unrounded.</param>
/// <param name="Arithmetic">The same in words and figures, shown to six places.</param>
/// <param name="Read">Where quantity and price were read.</param>
/// <param name="Of">The groups that a percentage is taken of; empty elsewhere.</param>
public sealed record QuoteLine(
    QuoteGroup Group,
    string What,
    decimal Quantity,
    string Unit,
    decimal UnitPrice,
    int Per,
    decimal Amount,
    string Arithmetic,
    string Read,
    IReadOnlyList<QuoteGroup> Of);
