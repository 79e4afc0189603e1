using System.Globalization;
using System.Text.Json;
using Linewright.Brief;
using Linewright.Files;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Quote;

namespace Linewright.Delivery;

/// <summary>Writes quotes, grids and stone orders as files: for the shop as workbook, table and data, for the client as a page.</summary>
/// <remarks>The same quote gives the same bytes. Nothing of the cost stands in the client's page.</remarks>
public static class QuoteFiles
{
    /// <summary>Everything that <see cref="Write(PieceQuote, ResolvedBrief, Func{string, Stream})"/> and its like may write.</summary>
    public static IReadOnlyList<string> Names { get; } = ["quote.json", "quote.csv", "quote.xlsx", "quote-client.pdf", "stones.csv", "grid.json", "grid.csv", "grid.xlsx"];

    /// <summary>Writes the quote of a piece, the client's page on A4.</summary>
    /// <param name="quote">The quote.</param>
    /// <param name="brief">The piece's brief.</param>
    /// <param name="create">Opens a new file for writing by its name.</param>
    public static void Write(PieceQuote quote, ResolvedBrief brief, Func<string, Stream> create) => Write(quote, brief, PaperSize.A4, create);

    /// <summary>Writes the quote of a piece. Where a price is missing there is no page for the client.</summary>
    /// <param name="quote">The quote.</param>
    /// <param name="brief">The piece's brief.</param>
    /// <param name="paper">The paper of the client's page.</param>
    /// <param name="create">Opens a new file for writing by its name.</param>
    public static void Write(PieceQuote quote, ResolvedBrief brief, PaperSize paper, Func<string, Stream> create)
    {
        ArgumentNullException.ThrowIfNull(quote);
        ArgumentNullException.ThrowIfNull(create);
        using (var file = create("quote.json"))
        {
            QuoteJson.Write(quote, file);
        }

        using (var file = create("quote.csv"))
        {
            CsvWriter.Write(
                file,
                ["group", "what", "quantity", "unit", "unit_price", "per", "amount", "currency", "arithmetic", "read_from"],
                [.. quote.Lines.Select(line => Row(line, quote.Prices.Currency)), .. Sums(quote)]);
        }

        using (var file = create("quote.xlsx"))
        {
            XlsxWriter.Write(file, [QuoteSheets.Lines(quote), QuoteSheets.Stones(quote.Basis.Stones), QuoteSheets.About(quote)]);
        }

        if (quote.Total is not null)
        {
            using var file = create("quote-client.pdf");
            PdfWriter.Write(file, ClientPage.Of(quote, brief, paper));
        }
    }

    /// <summary>Writes a grid.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="prices">The head of its price list.</param>
    /// <param name="create">Opens a new file for writing by its name.</param>
    public static void Write(QuoteGrid grid, PriceHead prices, Func<string, Stream> create)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(prices);
        ArgumentNullException.ThrowIfNull(create);
        using (var file = create("grid.json"))
        {
            QuoteJson.Write(grid, file);
        }

        using (var file = create("grid.csv"))
        {
            CsvWriter.Write(
                file,
                [.. grid.Axes.Select(axis => axis.Path), "can_be_made", "links", "laid_flat_mm", "metal_g", "stones_ct", "metal_cost", "stones_cost", "work_cost", "cost", "total", "currency", "cautions", "reasons"],
                grid.Cells.Select(cell => (IReadOnlyList<CsvCell>)
                [
                    .. cell.Values.Select(value => (CsvCell)value), cell.CanBeMade ? "yes" : "no", Cell(cell.Links), cell.LaidFlatMm is { } mm ? Math.Round(mm, 6) : (CsvCell)"", Cell(cell.FinishedG), Cell(cell.StonesCt),
                    Cell(cell.MetalCost), Cell(cell.StonesCost), Cell(cell.WorkCost), Cell(cell.Cost), Cell(cell.Total), prices.Currency, Cell(cell.Cautions), string.Join("; ", cell.Reasons),
                ]));
        }

        using (var file = create("grid.xlsx"))
        {
            XlsxWriter.Write(file, [QuoteSheets.Grid(grid, prices)]);
        }
    }

    /// <summary>Writes a stone order as a table of one row.</summary>
    public static void WriteOrder(StoneOrder order, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(order);
        CsvWriter.Write(
            stream,
            ["species", "origin", "cut", "diameter_mm", "smallest_mm", "largest_mm", "sieve", "count", "spare_percent", "spares", "order", "each_ct", "set_ct", "order_ct", "deepest_pavilion_mm", "sieve_note", "spread_reason", "words"],
            [
                [
                    order.Species, order.Origin, order.Cut, order.DiameterMm, Math.Round(order.SmallestMm, 6), Math.Round(order.LargestMm, 6), order.Sieve, order.Count, order.SparePercent,
                    order.Spares, order.Order, order.EachCt, order.SetCt, order.OrderCt, Math.Round(order.DeepestMm, 6), order.SieveNote, order.SpreadReason, string.Join(" ", order.Words),
                ],
            ]);
    }

    private static IReadOnlyList<CsvCell> Row(QuoteLine line, string currency) =>
    [
        Group(line.Group), line.What, Cell(line.Quantity), line.Unit, Cell(line.UnitPrice), line.Per, Cell(line.Amount), currency, line.Arithmetic, line.Read,
    ];

    private static IEnumerable<IReadOnlyList<CsvCell>> Sums(PieceQuote quote)
    {
        foreach (var (what, amount, how) in new[] { ("cost", quote.Cost, ""), ("before tax", quote.BeforeTax, ""), ("total", quote.Total, quote.Rounding) })
        {
            yield return ["sum", what, "", "", "", "", Cell(amount), quote.Prices.Currency, how, ""];
        }

        foreach (var missing in quote.Missing)
        {
            yield return ["missing", missing.Path, "", "", "", "", "", "", missing.Needed, ""];
        }
    }

    /// <summary>The word of a group, as the tables spell it.</summary>
    internal static string Group(QuoteGroup group) => JsonNamingPolicy.KebabCaseLower.ConvertName(group.ToString());

    // As the JSON writes it: to ten places, without the zeros that arithmetic leaves.
    private static CsvCell Cell(decimal? value) => value is { } number ? new CsvCell(decimal.Round(number, 10, MidpointRounding.AwayFromZero).ToString("0.##########", CultureInfo.InvariantCulture)) : new CsvCell("");

    private static CsvCell Cell(int? value) => value is { } number ? number : new CsvCell("");
}
