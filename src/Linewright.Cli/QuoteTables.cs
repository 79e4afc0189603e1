using System.Globalization;
using System.Text.Json;
using Linewright.Materials;
using Linewright.Quote;
using Spectre.Console;

namespace Linewright.Cli;

/// <summary>Prints quotes and grids for a person, from 80 columns up.</summary>
internal sealed class QuoteTables(Desk desk) : IDisposable
{
    private readonly PrintedPage page = new(desk);

    /// <summary>The quote: every line with its arithmetic, then the sums or what is missing.</summary>
    public void Quote(PieceQuote quote)
    {
        var basis = quote.Basis;
        page.Line($"[bold]{Markup.Escape(basis.Name)}[/]");
        page.Line($"{Markup.Escape(basis.Metal)}, {basis.FinishedG:0.00} g finished, {basis.CastG:0.00} g as cast, {basis.MeltG:0.00} g to melt");
        page.Line($"{basis.Stones.Count} x {Markup.Escape(basis.Stones.Species)} {basis.Stones.DiameterMm:0.00} mm, {basis.Stones.SetCt:0.00} ct{Markup.Escape(quote.Grade.Length > 0 ? $", {quote.Grade}" : "")}");
        page.Line($"prices: {Markup.Escape(quote.Prices.Name)}, {Day(quote.Prices.Date)}");
        page.Console.WriteLine();
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(new TableColumn("what"));
        table.AddColumn(new TableColumn($"amount\n{quote.Prices.Currency}").RightAligned().NoWrap());
        foreach (var group in quote.Lines.GroupBy(line => line.Group))
        {
            table.AddRow($"[bold]{Key(group.Key)}[/]", $"[bold]{Amount(group.Sum(line => line.Amount))}[/]");
            foreach (var line in group)
            {
                table.AddRow(new Rows(new Text("  " + line.What), new Padder(new Text(line.Arithmetic, new Style(decoration: Decoration.Dim)), new Padding(4, 0, 0, 0))), new Text(Amount(line.Amount)).RightJustified());
            }
        }

        page.Console.Write(table);
        foreach (var missing in quote.Missing)
        {
            page.Line($"[red bold]missing[/] {Markup.Escape(missing.Path)}: {Markup.Escape(missing.Needed)}");
        }

        if (quote.Price() is { } price)
        {
            page.Line($"cost {Amount(quote.Cost!.Value)}, before tax {Amount(quote.BeforeTax!.Value)}");
            page.Line($"[bold]total {price}[/]");
            page.Line($"{Markup.Escape(quote.Rounding)}");
        }
        else
        {
            page.Line($"[bold]no total: {quote.Missing.Count} prices are missing[/]");
        }

        page.Console.WriteLine();
        foreach (var note in quote.ShopNotes.Concat(quote.Notes).Append(quote.Prices.Note).Where(note => note.Length > 0))
        {
            page.Line($"[dim]{Markup.Escape(note)}[/]");
        }
    }

    /// <summary>The grid: a cell a row, reasons under the table.</summary>
    public void Grid(QuoteGrid grid, PriceHead prices)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (var axis in grid.Axes)
        {
            table.AddColumn(new TableColumn(Markup.Escape(axis.Path[(axis.Path.IndexOf('.', StringComparison.Ordinal) + 1)..].Replace('_', '\n'))).NoWrap().PadLeft(0).PadRight(1));
        }

        foreach (var head in (string[])["links", "metal\ng", "stones\nct", $"total\n{prices.Currency}", ""])
        {
            table.AddColumn(new TableColumn(head).RightAligned().NoWrap().PadLeft(0).PadRight(1));
        }

        var reasons = new List<string>();
        var digits = MaterialTables.Currencies.Find(prices.Currency).MinorDigits.ToString(CultureInfo.InvariantCulture);
        var cheapest = grid.Cheapest();
        foreach (var cell in grid.Cells)
        {
            var note = cell.CanBeMade && cell.Reasons.Count == 0 ? cell == cheapest ? "least" : "" : $"({Reason(reasons, string.Join("; ", cell.Reasons))})";
            table.AddRow(
            [
                .. cell.Values.Select(Markup.Escape), Whole(cell.Links), Plain(cell.FinishedG, "0.00"), Plain(cell.StonesCt, "0.00"),
                cell is { Total: { } total, CanBeMade: true } ? $"[bold]{total.ToString("N" + digits, CultureInfo.InvariantCulture)}[/]" : "-", note,
            ]);
        }

        page.Console.Write(table);
        foreach (var (index, reason) in reasons.Index())
        {
            page.Line($"({index + 1}) {Markup.Escape(reason)}");
        }

        page.Line($"{grid.Cells.Count} cells, {grid.Cells.Count(cell => cell.CanBeMade)} can be made; {grid.Measured} of {grid.Solids} solids were measured, the others are the same");
        page.Line($"prices: {Markup.Escape(prices.Name)}, {Day(prices.Date)}, with tax");
        if (grid.Cells.All(cell => cell.Cautions is null))
        {
            page.Line($"[dim]not checked: run check on the one you choose, or --check here[/]");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => page.Dispose();

    private static string Reason(List<string> reasons, string reason)
    {
        if (!reasons.Contains(reason, StringComparer.Ordinal))
        {
            reasons.Add(reason);
        }

        return (reasons.IndexOf(reason) + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static string Key(QuoteGroup group) => JsonNamingPolicy.KebabCaseLower.ConvertName(group.ToString());

    private static string Amount(decimal value) => value.ToString("N4", CultureInfo.InvariantCulture);

    private static string Plain(decimal? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "-";

    private static string Whole(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "-";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
