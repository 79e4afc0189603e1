using Linewright.Materials;
using Linewright.Paper;

namespace Linewright.Quote;

/// <summary>The quote of one piece from one price list.</summary>
/// <remarks>An estimate to decide by, no binding offer; what else it is not stands in <see cref="Notes"/>. Where a price is missing there is no total.</remarks>
/// <param name="Basis">What was priced.</param>
/// <param name="Prices">Whose list.</param>
/// <param name="Grade">The stones' grade; empty where none was found.</param>
/// <param name="Lines">The lines, in the order of their groups, unrounded.</param>
/// <param name="Missing">What the list must still say; empty where it says all.</param>
/// <param name="Cost">All before markup and tax, unrounded; null where a price is missing.</param>
/// <param name="BeforeTax">With markup, unrounded; null where a price is missing.</param>
/// <param name="Total">With tax, rounded once; null where a price is missing.</param>
/// <param name="Rounding">How the total was rounded.</param>
/// <param name="Notes">What this quote is not.</param>
/// <param name="ShopNotes">How the shop's own cost was counted: for its books, not for the client.</param>
public sealed record PieceQuote(
    QuoteBasis Basis,
    PriceHead Prices,
    string Grade,
    IReadOnlyList<QuoteLine> Lines,
    IReadOnlyList<MissingPrice> Missing,
    decimal? Cost,
    decimal? BeforeTax,
    decimal? Total,
    string Rounding,
    IReadOnlyList<string> Notes,
    IReadOnlyList<string> ShopNotes)
{
    /// <summary>The total as money; null where a price is missing.</summary>
    public Money? Price() => Total is { } total ? new Money(total, MaterialTables.Currencies.Find(Prices.Currency)) : null;

    /// <summary>A sentence for each text of the client's page that has letters which paper cannot show.</summary>
    public IReadOnlyList<string> Unprinted() =>
    [
        .. new (string What, string? Text)[]
        {
            ("the piece's name", Basis.Name), ("the price list's name", Prices.Name), ("the price list's note", Prices.Note),
            ("the price list's validity", Prices.Validity), ("the tax's name", Prices.TaxName), ("the stones' grade", Grade),
        }.Select(each => UnprintedLetters.Sentence(each.What, each.Text)).OfType<string>(),
    ];

    /// <summary>What a group costs, unrounded.</summary>
    public decimal SumOf(QuoteGroup group) => Lines.Where(line => line.Group == group).Sum(line => line.Amount);
}
