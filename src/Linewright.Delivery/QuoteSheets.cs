using System.Globalization;
using Linewright.Files;
using Linewright.Making;
using Linewright.Materials;
using Linewright.Quote;

namespace Linewright.Delivery;

/// <summary>Quotes and grids laid out as sheets of a workbook. Amounts are formulas: a changed price or weight reckons on.</summary>
internal static class QuoteSheets
{
    // Row 1 is the heading, so the first line of a quote stands in row 2.
    private const int FirstRow = 2;

    /// <summary>The lines of a quote, then its sums.</summary>
    public static Sheet Lines(PieceQuote quote)
    {
        var rows = new List<IReadOnlyList<SheetCell>>();
        foreach (var (index, line) in quote.Lines.Index())
        {
            var row = FirstRow + index;
            var price = line.Of.Count > 0
                ? SheetCell.Of(SumIf(line.Of, row - 1), line.UnitPrice, CellFormat.FourDecimals)
                : SheetCell.Of(line.UnitPrice, CellFormat.FourDecimals);
            rows.Add(
            [
                SheetCell.Of(QuoteFiles.Group(line.Group)), SheetCell.Of(line.What), SheetCell.Of(line.Quantity, CellFormat.FourDecimals), SheetCell.Of(line.Unit), price,
                SheetCell.Of(line.Per, CellFormat.Whole), SheetCell.Of(FormattableString.Invariant($"C{row}*E{row}/F{row}"), line.Amount, CellFormat.FourDecimals),
                SheetCell.Of(line.Arithmetic), SheetCell.Of(line.Read),
            ]);
        }

        var last = FirstRow + quote.Lines.Count - 1;
        var digits = MaterialTables.Currencies.Find(quote.Prices.Currency).MinorDigits;
        var lines = FormattableString.Invariant($"SUM(G{FirstRow}:G{last})");
        string less(params QuoteGroup[] groups) => $"{lines}-({SumIf(groups, last)})";
        rows.Add(Sum("cost", less(QuoteGroup.Markup, QuoteGroup.Tax), quote.Cost, CellFormat.FourDecimals, ""));
        rows.Add(Sum("before tax", less(QuoteGroup.Tax), quote.BeforeTax, CellFormat.FourDecimals, ""));
        rows.Add(Sum("total", FormattableString.Invariant($"ROUND({lines},{digits})"), quote.Total, digits == 0 ? CellFormat.Whole : digits == 2 ? CellFormat.TwoDecimals : CellFormat.FourDecimals, quote.Rounding));
        rows.AddRange(quote.Missing.Select(missing => (IReadOnlyList<SheetCell>)[SheetCell.Of("missing", true), SheetCell.Of(missing.Path, true), .. Enumerable.Repeat(SheetCell.Empty, 5), SheetCell.Of(missing.Needed)]));
        return new Sheet(
            "Quote",
            [
                new("group", 11), new("what", 34), new("quantity", 11), new("unit", 10), new($"unit price, or the sum under %, {quote.Prices.Currency}", 16), new("per", 6),
                new($"amount, {quote.Prices.Currency}", 14), new("arithmetic", 62), new("read from", 48),
            ],
            rows);

        // A sum over lines of which some are missing would look like a price.
        IReadOnlyList<SheetCell> Sum(string what, string formula, decimal? value, CellFormat format, string how) =>
        [
            SheetCell.Of("sum", true), SheetCell.Of(what, true), SheetCell.Empty, SheetCell.Empty, SheetCell.Empty, SheetCell.Empty,
            value is null ? SheetCell.Of("no sum: a price is missing", true) : SheetCell.Of(formula, value, format, true), SheetCell.Of(how),
        ];
    }

    /// <summary>The stone order, a name and a value a row.</summary>
    public static Sheet Stones(StoneOrder order)
    {
        List<IReadOnlyList<SheetCell>> rows =
        [
            Text("species", order.Species),
            Text("origin", order.Origin),
            Text("cut", order.Cut),
            Number("diameter, mm", (decimal)order.DiameterMm),
            Number("smallest that the seats hold, mm", Millionths(order.SmallestMm)),
            Number("largest that the seats take, mm", Millionths(order.LargestMm)),
            Text("what sets the largest", order.SpreadReason),
            Text("sieve", order.Sieve ?? "none"),
            Text("sieve and seats", order.SieveNote),
            Number("deepest pavilion, girdle to culet, mm", Millionths(order.DeepestMm)),
            Number("stones to be set", order.Count, CellFormat.Whole),
            Number("spares asked for, %", order.SparePercent, CellFormat.TwoDecimals),
            Formula("spares, rounded up", "ROUNDUP(B12*B13/100,0)", order.Spares, CellFormat.Whole),
            Formula("stones to buy", "B12+B14", order.Order, CellFormat.Whole),
            Number("one stone, ct", order.EachCt),
            Formula("to be set, ct", "B12*B16", order.SetCt, CellFormat.FourDecimals),
            Formula("to buy, ct", "B15*B16", order.OrderCt, CellFormat.FourDecimals),
            .. order.Words.Select((words, index) => Text(index == 0 ? "words for the order" : "", words)),
        ];
        return new Sheet("Stones", [new("stone order", 38), new("", 90)], rows);
    }

    /// <summary>The piece, the price list and what the quote is not.</summary>
    public static Sheet About(PieceQuote quote)
    {
        var (basis, prices) = (quote.Basis, quote.Prices);
        List<IReadOnlyList<SheetCell>> rows =
        [
            Text("piece", basis.Name),
            Text("metal", basis.Metal),
            Number("finished, g", basis.FinishedG, CellFormat.TwoDecimals),
            Number("as cast, g", basis.CastG, CellFormat.TwoDecimals),
            Number("to melt, g", basis.MeltG, CellFormat.TwoDecimals),
            Number("links", basis.Links, CellFormat.Whole),
            Number("joints", basis.Joints, CellFormat.Whole),
            Number("laid flat, mm", Millionths(basis.LaidFlatMm), CellFormat.TwoDecimals),
            Text("stones' grade", quote.Grade),
            Text("prices of", prices.Name),
            Text("day of the prices", Day(prices.Date)),
            Text("meant to hold until", prices.ValidUntil is { } end ? Day(end) : "not said"),
            Text("validity", prices.Validity),
            Text("note", prices.Note),
            .. quote.ShopNotes.Select((note, index) => Text(index == 0 ? "how it was counted" : "", note)),
            .. quote.Notes.Select((note, index) => Text(index == 0 ? "what this is not" : "", note)),
        ];
        return new Sheet("About", [new("about", 24), new("", 110)], rows);
    }

    /// <summary>A grid, a cell a row.</summary>
    public static Sheet Grid(QuoteGrid grid, PriceHead prices)
    {
        var digits = MaterialTables.Currencies.Find(prices.Currency).MinorDigits;
        var rows = grid.Cells.Select(cell => (IReadOnlyList<SheetCell>)
        [
            .. cell.Values.Select(value => decimal.TryParse(value, NumberStyles.Number, CultureInfo.InvariantCulture, out var number) ? SheetCell.Of(number, CellFormat.General) : SheetCell.Of(value)),
            SheetCell.Of(cell.CanBeMade ? "yes" : "no"), SheetCell.Of(cell.Links, CellFormat.Whole), SheetCell.Of(cell.FinishedG, CellFormat.TwoDecimals), SheetCell.Of(cell.StonesCt, CellFormat.FourDecimals),
            SheetCell.Of(cell.MetalCost, CellFormat.TwoDecimals), SheetCell.Of(cell.StonesCost, CellFormat.TwoDecimals), SheetCell.Of(cell.WorkCost, CellFormat.TwoDecimals),
            SheetCell.Of(cell.Total, digits == 0 ? CellFormat.Whole : digits == 2 ? CellFormat.TwoDecimals : CellFormat.FourDecimals, true),
            SheetCell.Of(cell.Cautions, CellFormat.Whole), SheetCell.Of(string.Join("; ", cell.Reasons)),
        ]).ToList();
        return new Sheet(
            "Grid",
            [
                .. grid.Axes.Select(axis => new SheetColumn(axis.Path, 20)), new("can be made", 9), new("links", 8), new("metal, g", 10), new("stones, ct", 10),
                new($"metal and casting, {prices.Currency}", 13), new($"stones, {prices.Currency}", 13), new($"work, {prices.Currency}", 13), new($"total with tax, {prices.Currency}", 15), new("cautions", 9), new("why", 70),
            ],
            rows);
    }

    private static string SumIf(IEnumerable<QuoteGroup> groups, int last)
        => string.Join("+", groups.Select(group => FormattableString.Invariant($"SUMIF(A{FirstRow}:A{last},\"{QuoteFiles.Group(group)}\",G{FirstRow}:G{last})")));

    private static IReadOnlyList<SheetCell> Text(string name, string value) => [SheetCell.Of(name, true), SheetCell.Of(value)];

    private static IReadOnlyList<SheetCell> Number(string name, decimal value, CellFormat format = CellFormat.FourDecimals) => [SheetCell.Of(name, true), SheetCell.Of(value, format)];

    private static IReadOnlyList<SheetCell> Formula(string name, string formula, decimal value, CellFormat format) => [SheetCell.Of(name, true), SheetCell.Of(formula, value, format)];

    private static decimal Millionths(double value) => decimal.Round((decimal)value, 6);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
