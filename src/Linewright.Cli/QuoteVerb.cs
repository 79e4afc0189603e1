using System.CommandLine;
using Linewright.Brief;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Quote;

namespace Linewright.Cli;

/// <summary>quote: what the piece costs by the shop's price list, alone or beside its alternatives.</summary>
internal sealed class QuoteVerb
{
    private readonly Desk desk;
    private readonly BriefArguments brief = new();
    private readonly PriceArguments prices = new(isRequired: true);

    private readonly Option<string[]> grid = new("--grid")
    {
        Description = "Quotes every combination of some values, such as --grid metal=silver-925,gold-750-yellow stone.diameter_mm=2.5,3.",
        HelpName = "FIELD=VALUE,VALUE",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = true,
    };

    private readonly Option<bool> check = new("--check") { Description = "With --grid: runs every check on each cell too, on coarser meshes; five times as long." };

    private readonly Option<string?> folder = new("--out") { Description = "A folder for the files: workbook, tables, JSON, and a page for the client.", HelpName = "DIR" };

    private readonly PageArguments page = new("The paper of the client's page.", hasDate: false);

    private readonly Option<bool> force = new("--force") { Description = "Replaces an earlier folder of ours though other files lie in it." };

    private QuoteVerb(Desk desk) => this.desk = desk;

    public static Command Create(Desk desk)
    {
        var parts = new QuoteVerb(desk);
        var verb = new Command("quote", "Prices the piece from the shop's price list, with its arithmetic; or a grid of alternatives.");
        parts.brief.AddTo(verb);
        parts.brief.Json.Description = "Prints the quote, or the grid, as JSON.";
        parts.prices.AddTo(verb);
        foreach (var option in (Option[])[parts.grid, parts.check, parts.folder, parts.force])
        {
            verb.Options.Add(option);
        }

        parts.page.AddTo(verb);
        verb.SetAction((parse, stop) => parts.RunAsync(parse, stop));
        return verb;
    }

    private async Task<int> RunAsync(ParseResult parse, CancellationToken stop)
    {
        var list = prices.Read(parse)!;
        var paper = page.Paper(parse);
        var axes = AxesOf(parse.GetValue(grid) ?? []);
        if (QuoteGrids.Count(axes) is > QuoteGrids.MostCells and var count)
        {
            throw new RefusalException(ExitCode.Asked, FormattableString.Invariant($"--grid: read {count} combinations, expected at most {QuoteGrids.MostCells}; ask for fewer values"));
        }

        var briefs = brief.ReadEach(parse, desk, [.. QuoteGrids.Combinations(axes).Select(values => (IReadOnlyList<string>)[.. axes.Zip(values, (axis, value) => $"{axis.Path}={value}")])]);
        return axes.Count == 0
            ? await OneAsync(parse, briefs[0], list, paper, stop).ConfigureAwait(false)
            : await ManyAsync(parse, axes, briefs, list, stop).ConfigureAwait(false);
    }

    private async Task<int> OneAsync(ParseResult parse, ResolvedBrief asked, PriceList list, PaperSize paper, CancellationToken stop)
    {
        var (report, quote) = await WorkAsync(stage => desk.Workbench.Quote(asked, list, parse.GetValue(prices.Grade), stage, stop), stop).ConfigureAwait(false);
        if (parse.GetValue(brief.Json))
        {
            QuoteJson.Write(quote, desk.Out);
            desk.Out.Flush();
        }
        else
        {
            using var tables = new QuoteTables(desk);
            tables.Quote(quote);
        }

        prices.Demand(parse, quote);
        if (parse.GetValue(folder) is not null)
        {
            desk.TellUnprinted(quote);
        }

        Write(parse, report, create => Files(quote, asked, paper, create), stop);
        return ExitCode.Done;
    }

    private static void Files(PieceQuote quote, ResolvedBrief asked, PaperSize paper, Func<string, Stream> create)
    {
        QuoteFiles.Write(quote, asked, paper, create);
        using var file = create("stones.csv");
        QuoteFiles.WriteOrder(quote.Basis.Stones, file);
    }

    private async Task<int> ManyAsync(ParseResult parse, IReadOnlyList<GridAxis> axes, IReadOnlyList<ResolvedBrief> briefs, PriceList list, CancellationToken stop)
    {
        var found = await WorkAsync(stage => desk.Workbench.Grid(axes, briefs, list, parse.GetValue(prices.Grade), parse.GetValue(check), stage, stop), stop).ConfigureAwait(false);
        if (parse.GetValue(brief.Json))
        {
            QuoteJson.Write(found, desk.Out);
            desk.Out.Flush();
        }
        else
        {
            using var tables = new QuoteTables(desk);
            tables.Grid(found, PriceHead.Of(list));
        }

        if (parse.GetValue(folder) is not null && found.Cells.All(cell => cell.Links is null))
        {
            throw new RefusalException(ExitCode.Asked, "--grid: no line closes in any cell, so no files were written; ask for other values");
        }

        var first = found.Cells.Index().FirstOrDefault(cell => cell.Item.Links is not null).Index;
        Write(parse, null, create => QuoteFiles.Write(found, PriceHead.Of(list), create), stop, () => desk.Workbench.Plan(briefs[first], new StageLine(desk.Error, false), stop));
        return ExitCode.Done;
    }

    private async Task<T> WorkAsync<T>(Func<IProgress<string>, T> work, CancellationToken stop)
    {
        using var stage = new StageLine(desk.Error, desk.ShowsProgress);

        // Beside this thread, so that Ctrl+C is heard while the work goes on.
        return await Task.Run(() => work(stage), stop).ConfigureAwait(false);
    }

    // A folder of quotes has a report.json too: by it a later run knows the folder as one of ours.
    private void Write(ParseResult parse, Report? report, Action<Func<string, Stream>> files, CancellationToken stop, Func<Report>? plan = null)
    {
        if (parse.GetValue(folder) is not { } path)
        {
            return;
        }

        using var place = OutputFolder.Open(path, parse.GetValue(force));
        try
        {
            files(place.Create);
            using (var file = place.Create("report.json"))
            {
                ReportJson.Write(report ?? plan!(), file);
            }

            stop.ThrowIfCancellationRequested();
            place.Publish();
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException(ExitCode.Ours, $"{path}: a file could not be written ({slip.Message.TrimEnd('.')}); nothing was written; make room, or choose another folder");
        }

        desk.Error.WriteLine($"written to {path}");
    }

    private static List<GridAxis> AxesOf(IReadOnlyList<string> texts)
    {
        var axes = new List<GridAxis>();
        foreach (var text in texts)
        {
            var cut = text.IndexOf('=', StringComparison.Ordinal);
            var values = cut <= 0 ? [] : text[(cut + 1)..].Split(',', StringSplitOptions.TrimEntries);
            if (values.Length == 0 || values.Contains("", StringComparer.Ordinal))
            {
                throw new RefusalException(ExitCode.Asked, $"--grid {text}: expected a field, =, and values parted by commas; write --grid stone.diameter_mm=2.5,3,3.5");
            }

            axes.Add(new GridAxis(text[..cut].Trim(), values));
        }

        return axes;
    }
}
