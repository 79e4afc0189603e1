using System.Text.Json.Nodes;
using Linewright.Brief;
using Linewright.Delivery;
using Linewright.Paper;
using Linewright.Quote;
using Linewright.Studio.Pieces;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>What a piece costs by a price list that comes with the request, alone or beside its alternatives. The list is not kept.</summary>
internal static class QuoteEndpoints
{
    private const string Workbook = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    // Four times what a cell takes on two processors; docs/notes/quote.md has the figures.
    private static readonly TimeSpan CellTime = TimeSpan.FromSeconds(1), CheckedCellTime = TimeSpan.FromSeconds(5);

    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/quote", QuoteAsync)
            .WithSummary("""
                Prices a piece: { "brief": ..., "prices": ..., "grade": "...", "grid": { "metal": [...], "stone.diameter_mm": [...] }, "check": true }. Brief and prices are objects, or the files' text as strings.
                format=json: the quote or the grid as the command quote prints it, missing prices named; xlsx, csv, pdf (the client's page, paper=a4|letter), stones (the order as CSV): refused while a price is missing.
                A grid tells how far it is as lines of JSON where asked for by Accept: application/x-ndjson.
                """)
            .Accepts<JsonObject>("application/json")
            .Produces<object>(contentType: "application/json", additionalContentTypes: [Workbook, "text/csv", "application/pdf", StageLines.MediaType])
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task QuoteAsync(HttpContext context, PieceShelf shelf, GridShelf grids, WorkQueue queue, string format = "json", string paper = "a4")
    {
        if (format is not ("json" or "xlsx" or "csv" or "pdf" or "stones"))
        {
            throw new BadHttpRequestException($"format: read {format}, expected json, xlsx, csv, pdf or stones");
        }

        var size = WorkshopEndpoints.SizeOf(paper);
        var body = await Bodies.ReadAsync(context).ConfigureAwait(false);
        var asked = QuoteRequest.Read(body);
        var list = asked.List();
        if (asked.Grid.Count == 0)
        {
            await OneAsync(context, shelf.Of(asked.Brief), list, asked.Grade, size, queue, format).ConfigureAwait(false);
        }
        else if (format is "pdf" or "stones")
        {
            throw new BadHttpRequestException($"format: read {format}, expected json, xlsx or csv for a grid");
        }
        else
        {
            await GridAsync(context, body, asked, list, grids, queue, format).ConfigureAwait(false);
        }
    }

    private static async Task OneAsync(HttpContext context, SolvedPiece solved, PriceList list, string? grade, PaperSize paper, WorkQueue queue, string format)
    {
        var basis = await queue.LongAsync(stop => solved.Papers.BasisAsync(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        var quote = Quotes.Of(basis, list, grade);
        if (format == "json")
        {
            using var text = new MemoryStream();
            QuoteJson.Write(quote, text);
            await Results.Bytes(text.ToArray(), "application/json").ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        if (quote.Missing.Count > 0)
        {
            throw PricesRefusedException.Of(quote.Missing);
        }

        var files = FilesInMemory.Of(create =>
        {
            QuoteFiles.Write(quote, solved.Brief, paper, create);
            using var order = create("stones.csv");
            QuoteFiles.WriteOrder(basis.Stones, order);
        });
        var (file, type) = format switch
        {
            "xlsx" => ("quote.xlsx", Workbook),
            "csv" => ("quote.csv", "text/csv"),
            "pdf" => ("quote-client.pdf", "application/pdf"),
            _ => ("stones.csv", "text/csv"),
        };
        await WorkshopEndpoints.FileAsync(context, files, file, type, $"{FileStem.Of(solved.Brief.Name)}-{file}").ConfigureAwait(false);
    }

    private static async Task GridAsync(HttpContext context, byte[] body, QuoteRequest asked, PriceList list, GridShelf grids, WorkQueue queue, string format)
    {
        // Counted before they are laid out: a few short lists multiply to more than any memory holds.
        var count = QuoteGrids.Count(asked.Grid);
        if (count > QuoteGrids.MostCells)
        {
            throw new BadHttpRequestException(FormattableString.Invariant($"grid: read {count} combinations, expected at most {QuoteGrids.MostCells}; ask for fewer values"));
        }

        var results = QuoteGrids.Combinations(asked.Grid).Select(values => BriefReader.Override(asked.Brief, "brief", [.. asked.Grid.Zip(values, (axis, value) => $"{axis.Path}={value}")])).ToList();
        if (results.SelectMany(result => result.Faults).Distinct().ToList() is { Count: > 0 } faults)
        {
            throw new BriefRefusedException(faults);
        }

        List<ResolvedBrief> briefs = [.. results.Select(result => BriefDefaults.Resolve(result.Brief!))];
        Task<QuoteGrid> Run(IProgress<string> stage, CancellationToken stop) => grids.GetAsync(
            body, () => QuoteGrids.Run(asked.Grid, briefs, list, asked.Grade, asked.IsChecked, new Cells(stage, briefs.Count), stop), stop);

        var limit = WorkQueue.LongTime + count * (asked.IsChecked ? CheckedCellTime : CellTime);
        if (format == "json" && StageLines.AreWanted(context.Request))
        {
            await StageLines.WriteAsync(context, async (stage, stop) =>
                JsonNode.Parse(Json(await queue.LongAsync(limit, token => Run(stage, token), stop).ConfigureAwait(false)))!.AsObject()).ConfigureAwait(false);
            return;
        }

        var grid = await queue.LongAsync(limit, stop => Run(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        if (format == "json")
        {
            await Results.Bytes(Json(grid), "application/json").ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        var files = FilesInMemory.Of(create => QuoteFiles.Write(grid, PriceHead.Of(list), create));
        await WorkshopEndpoints.FileAsync(context, files, $"grid.{format}", format == "xlsx" ? Workbook : "text/csv", $"{FileStem.Of(briefs[0].Name)}-grid.{format}").ConfigureAwait(false);
    }

    private static byte[] Json(QuoteGrid grid)
    {
        using var text = new MemoryStream();
        QuoteJson.Write(grid, text);
        return text.ToArray();
    }

    private sealed class Cells(IProgress<string> stage, int count) : IProgress<int>
    {
        public void Report(int value) => stage.Report(FormattableString.Invariant($"Quoted {value} of {count} cells"));
    }
}
