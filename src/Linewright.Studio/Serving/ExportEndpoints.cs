using System.Text.Json.Nodes;
using Linewright.Delivery;
using Linewright.Paper;
using Linewright.Quote;
using Linewright.Studio.Pieces;
using Linewright.Studio.Wire;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>Everything that the command make writes, as one archive; with a price list its quote too.</summary>
internal static class ExportEndpoints
{
    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/export", ExportAsync)
            .WithSummary("""
                Builds, checks and writes every file that make writes, as a zip. The body is a brief, or { "brief": ..., "prices": ..., "grade": "..." } as for a quote: then quote.xlsx, quote.csv, quote.json and
                quote-client.pdf lie in it too, and it is refused while a price is missing. paper=a4|letter for the sheet and the client's page. Prices are read for this answer and not kept.
                With Accept: application/x-ndjson, lines of JSON with progress and at the end the address to fetch the zip from.
                """)
            .Accepts<JsonObject>("application/json")
            .Produces<byte[]>(contentType: "application/zip")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/export/{key}", (string key, ReadyFiles ready) => ready.Take(key) is { } file
                ? Results.File(file.Bytes, "application/zip", file.Name)
                : Results.Problem(title: "No such archive", detail: "It has been fetched already, or newer ones took its place.", statusCode: StatusCodes.Status404NotFound))
            .WithSummary("Hands a finished archive out, once.")
            .Produces<byte[]>(contentType: "application/zip")
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task ExportAsync(HttpContext context, PieceShelf shelf, WorkQueue queue, ReadyFiles ready, string paper = "a4")
    {
        var size = WorkshopEndpoints.SizeOf(paper);
        var body = await Bodies.ReadAsync(context).ConfigureAwait(false);
        var asked = QuoteRequest.IsOne(body) ? QuoteRequest.Read(body) : null;
        if (asked is { Grid.Count: > 0 })
        {
            throw new BadHttpRequestException("grid: an archive holds one piece, expected a brief, prices and grade");
        }

        var list = asked?.List();
        var solved = shelf.Of(asked?.Brief ?? body);
        var name = FileStem.Of(solved.Brief.Name) + ".zip";
        Task<byte[]> Zip(IProgress<string> stage, CancellationToken stop) => ZipAsync(solved, list, asked?.Grade, size, stage, stop);
        if (StageLines.AreWanted(context.Request))
        {
            await StageLines.WriteAsync(context, async (stage, stop) =>
            {
                var zip = await queue.LongAsync(token => Zip(stage, token), stop).ConfigureAwait(false);
                return new JsonObject { ["ready"] = $"/api/export/{ready.Keep(name, zip)}", ["name"] = name, ["bytes"] = zip.Length };
            }).ConfigureAwait(false);
            return;
        }

        var bytes = await queue.LongAsync(stop => Zip(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        await Results.File(bytes, "application/zip", name).ExecuteAsync(context).ConfigureAwait(false);
    }

    private static async Task<byte[]> ZipAsync(SolvedPiece solved, PriceList? list, string? grade, PaperSize paper, IProgress<string> stage, CancellationToken stop)
    {
        // First what may be refused: nobody waits for the checks to hear of a price that is missing.
        var quote = list is null ? null : Quotes.Of(await solved.Papers.BasisAsync(stage, stop).ConfigureAwait(false), list, grade);
        if (quote is { Missing.Count: > 0 })
        {
            throw PricesRefusedException.Of(quote.Missing);
        }

        var report = await solved.ReportAsync(stage, stop).ConfigureAwait(false);
        var made = await solved.MadeAsync(stage, stop).ConfigureAwait(false);
        var casting = await solved.CastingAsync(stage, stop).ConfigureAwait(false);
        return PieceZip.Write(made, casting, report with { Casting = casting.Report }, quote, paper, stage, stop);
    }
}
