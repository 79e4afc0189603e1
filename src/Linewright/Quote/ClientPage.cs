using System.Collections.Immutable;
using System.Globalization;
using Linewright.Brief;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Materials;
using Linewright.Paper;

namespace Linewright.Quote;

/// <summary>The quote as the client reads it: the piece, the price with tax, how long it holds, what to know. No line of cost.</summary>
/// <remarks>Upright, one column that reads from the top; on A4 or letter. Runs on to a further page where the words need it.</remarks>
public static class ClientPage
{
    private const double MarginMm = 22, NameColumnMm = 38, GapMm = 7;

    private static readonly TextStyle Title = new(6, TextWeight.Strong), Price = new(5, TextWeight.Strong), Heading = new(2.8, TextWeight.Strong);

    private static readonly TextStyle Body = new(2.4), Small = new(2.1);

    /// <summary>The page, or pages.</summary>
    /// <param name="quote">A quote with a total.</param>
    /// <param name="brief">The piece's brief.</param>
    /// <param name="size">The sheet.</param>
    /// <exception cref="ArgumentException">The quote has no total: a client gets no price with a hole in it.</exception>
    public static PaperDocument Of(PieceQuote quote, ResolvedBrief brief, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(quote);
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(size);
        if (quote.Price() is not { } price)
        {
            throw new ArgumentException("a price is missing, so there is nothing to show a client", nameof(quote));
        }

        var column = new PageColumn(size, MarginMm);
        column.Text(quote.Basis.Name, Title);
        column.Space(2);
        column.Text($"Quote by {quote.Prices.Name}", Body);
        column.Space(GapMm);
        column.Rows(Facts(quote, brief), Body, NameColumnMm);
        column.Space(GapMm);
        column.Text(Figures(price), Price);
        column.Space(1.5);
        column.Text(
            quote.Prices.TaxPercent > 0
                ? string.Create(CultureInfo.InvariantCulture, $"with {quote.Prices.TaxPercent:0.##} % {quote.Prices.TaxName}")
                : $"no {quote.Prices.TaxName} in it",
            Body);
        column.Space(1.5);
        column.Text(Validity(quote.Prices), Body);
        Section(column, "What this quote is", [.. quote.Notes, quote.Prices.Note], Body);
        Section(column, "Wearing and keeping it", Cautions.ForWearer(brief), Body);
        column.Foot($"{quote.Basis.Name}, prices of {Day(quote.Prices.Date)}", Small);
        return new PaperDocument($"{quote.Basis.Name}: quote", column.Pages());
    }

    private static ImmutableArray<ImmutableArray<string>> Facts(PieceQuote quote, ResolvedBrief brief)
    {
        var (basis, order) = (quote.Basis, quote.Basis.Stones);
        var alloy = brief.Alloy;
        var fineness = alloy.Family is MetalFamily.Brass or MetalFamily.Bronze
            ? "a base metal, not hallmarked"
            : $"{WorkLines.Fineness(alloy)} parts in a thousand of {alloy.Family.ToString().ToLowerInvariant()}";
        var plated = brief.Finish.RhodiumUm > 0 ? string.Create(CultureInfo.InvariantCulture, $", rhodium plated {brief.Finish.RhodiumUm:0.##} µm") : ", polished";
        return
        [
            ["Piece", string.Create(CultureInfo.InvariantCulture, $"Line bracelet of {basis.Links} links, {basis.LaidFlatMm:0.0} mm laid flat with its box clasp{(brief.Clasp.Safety ? " and safety" : "")}")],
            ["Metal", string.Create(CultureInfo.InvariantCulture, $"{alloy.Name}, {fineness}{plated}")],
            ["Stones", string.Create(CultureInfo.InvariantCulture, $"{order.Count} round brilliants of {order.DiameterMm:0.00} mm: {Origin(order, brief.Species)}, {quote.Grade}")],
            ["Weight", string.Create(CultureInfo.InvariantCulture, $"metal about {basis.FinishedG:0.0} g; stones about {order.EachCt:0.000} ct each, {order.SetCt:0.00} ct together")],
            ["Disclosure", Disclosure(order, brief.Species)],
        ];
    }

    // The word that the law and ISO 18323 ask for stands before the stone's name, never after it.
    private static string Origin(StoneOrder order, Species species)
    {
        var name = species.Name.ToLowerInvariant();
        return order.Origin switch
        {
            "laboratory-grown" => name,
            "manufactured" => $"{name}, manufactured, a simulant",
            _ => $"natural {name}",
        };
    }

    private static string Disclosure(StoneOrder order, Species species) => order.Origin switch
    {
        "laboratory-grown" => "The stones are laboratory-grown; whoever sells them on must say so. Treatment after growth is stated in writing.",
        "manufactured" => "The stones are manufactured and imitate another; whoever sells them on must say so.",
        _ when species.Disclosure.StartsWith("Say ", StringComparison.Ordinal) => $"The dealer's written statement goes with the piece, on any {species.Disclosure[4..].TrimEnd('.')}.",
        _ => $"The dealer's written statement goes with the piece. {species.Disclosure}",
    };

    private static string Validity(PriceHead prices)
    {
        var end = prices.ValidUntil is { } day ? $"The quote is meant to hold until {Day(day)}." : "The price list names no day until which the quote holds.";
        return $"Prices of {Day(prices.Date)}. {end} {prices.Validity}".TrimEnd();
    }

    private static void Section(PageColumn column, string heading, IEnumerable<string> sentences, TextStyle style)
    {
        column.Space(GapMm);
        column.Text(heading, Heading);
        foreach (var sentence in sentences.Where(sentence => sentence.Length > 0))
        {
            column.Space(1.4);
            column.Text(sentence, style);
        }
    }

    // 8,587.23 EUR: grouped, for a person.
    private static string Figures(Money money)
        => money.Amount.ToString("N" + money.Currency.MinorDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " " + money.Currency.Key;

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
