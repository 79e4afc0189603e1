using System.Globalization;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>Front door of the room: prices a piece from a list. A pure function; the same piece and list give the same quote.</summary>
public static class Quotes
{
    private static readonly QuoteGroup[] Metal = [QuoteGroup.Metal, QuoteGroup.Casting];

    private static readonly QuoteGroup[] Work =
        [QuoteGroup.Setting, QuoteGroup.Labour, QuoteGroup.Findings, QuoteGroup.Plating, QuoteGroup.Assay, QuoteGroup.Other, QuoteGroup.Overhead];

    /// <summary>Prices a piece.</summary>
    /// <param name="basis">The piece.</param>
    /// <param name="list">The prices.</param>
    /// <param name="grade">The stones' grade, as the list spells it; null where it has one only.</param>
    public static PieceQuote Of(QuoteBasis basis, PriceList list, string? grade = null)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(list);
        var ledger = new Ledger(list.Currency.Key);
        MetalLines.Add(ledger, basis, list);
        var taken = StoneLines.Add(ledger, basis, list, grade);
        WorkLines.Add(ledger, basis, list);
        ledger.Percent(QuoteGroup.Overhead, "overhead on labour and setting", list.OverheadPercent, "overhead_percent", QuoteGroup.Setting, QuoteGroup.Labour);
        var cost = ledger.Lines.Sum(line => line.Amount);
        ledger.Percent(QuoteGroup.Markup, "markup on metal and casting", list.MetalMarkupPercent, "markup_percent.metal", Metal);
        ledger.Percent(QuoteGroup.Markup, "markup on stones", list.StonesMarkupPercent, "markup_percent.stones", QuoteGroup.Stones);
        ledger.Percent(QuoteGroup.Markup, "markup on work", list.WorkMarkupPercent, "markup_percent.work", Work);
        var beforeTax = ledger.Lines.Sum(line => line.Amount);
        ledger.Percent(
            QuoteGroup.Tax, list.TaxName ?? "tax", list.TaxPercent, "tax",
            [.. Enum.GetValues<QuoteGroup>().Where(group => group != QuoteGroup.Tax)]);
        var exact = ledger.Lines.Sum(line => line.Amount);
        var isWhole = ledger.Missing.Count == 0;
        var rounded = new Money(exact, list.Currency).Rounded();
        var quote = new PieceQuote(
            basis, PriceHead.Of(list), taken, ledger.Lines, ledger.Missing,
            isWhole ? cost : null, isWhole ? beforeTax : null, isWhole ? rounded.Amount : null,
            isWhole ? RoundingOf(exact, rounded) : "no total: a price is missing",
            NotesOf(basis), ShopNotesOf(basis));
        return quote with { ShopNotes = [.. quote.ShopNotes, .. quote.Unprinted()] };
    }

    private static string RoundingOf(decimal exact, Money rounded) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Ledger.Sum(exact)} {rounded.Currency.Key}, the sum of all lines unrounded, is rounded once to {rounded}; half of the smallest unit goes up");

    // What a shop must know to write its list, and to price a piece that shares a flask or a lot with others.
    private static List<string> ShopNotesOf(QuoteBasis basis)
    {
        var isMarked = MaterialTables.Alloys.Find(basis.Metal).Family is not (MetalFamily.Brass or MetalFamily.Bronze);
        var (plates, flasks) = (basis.Plates == 1 ? "printed plate" : "printed plates", basis.Trees == 1 ? "flask" : "flasks");
        return
        [
            string.Create(
                CultureInfo.InvariantCulture,
                $"Counted for this piece alone: {basis.Plates} {plates}, {basis.Trees} {flasks}, one refining lot{(isMarked ? ", one assay" : "")}. Where pieces share one, write one piece's share in the price list: patterns.per_plate, per_flask under casting, metal.refining_fee{(isMarked ? ", assay" : "")}."),
            string.Create(
                CultureInfo.InvariantCulture,
                $"The {basis.MeltG:0.00} g to melt are {basis.CastG:0.00} g of castings with the sprues, stems and buttons of the planned trees, as plate has them. A caster who sprues otherwise melts another weight."),
        ];
    }

    // Where money or law can hurt. Common practice; the local law decides.
    private static List<string> NotesOf(QuoteBasis basis)
    {
        var alloy = MaterialTables.Alloys.Find(basis.Metal);
        var notes = new List<string>
        {
            "An estimate to decide by, not a binding offer: it binds nobody until a person signs for it. Metal and stones are settled at the price of the day of order.",
            "Weights are computed from the design; the finished piece is weighed, and stones are invoiced by the dealer's balance.",
        };
        if (alloy.Family is not (MetalFamily.Brass or MetalFamily.Bronze))
        {
            notes.Add($"{WorkLines.Fineness(alloy)} is a nominal fineness until it is assayed. Who must assay and mark, from what weight on and in which words, differs from country to country; the assay office decides, not this paper.");
        }

        if (FinenessGrades.Of(alloy) is { } grade && grade != (int)alloy.FinenessPerMille)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"{WorkLines.Fineness(alloy)} is no grade of ISO 9202: where the law follows it the piece is marked {grade}."));
        }

        notes.Add("Taxes, duties, margin schemes and refunds are local law: the rate is the one that the price list names. Ask somebody licensed to advise on them.");
        return notes;
    }
}
