using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Studio.Pieces;
using Linewright.Studio.Wire;
using Linewright.Tolerance;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>The papers for the bench: technical sheet, plates and trees, tolerance. Files are those of the command line, byte for byte.</summary>
internal static class WorkshopEndpoints
{
    // What a lot holds at least: the command line's limit too.
    private const int LeastPieces = 100;

    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        Brief(api.MapPost("/sheet", SheetAsync), "The technical sheet as the command sheet draws it. format=pdf, dxf, or svg: one page with page=1 and on, all pages as JSON without. paper=a4|letter, date=YYYY-MM-DD.")
            .Produces<byte[]>(contentType: "application/pdf", additionalContentTypes: ["image/svg+xml", "image/vnd.dxf", "application/json"]);
        Brief(api.MapPost("/plate", PlateAsync), "The castings. format=json: the report's casting, where every pattern stands on its plate, and each pattern's lines from above; format=3mf with plate=1 and on: that plate; format=csv: the trees.")
            .Produces<object>(contentType: "application/json", additionalContentTypes: ["model/3mf", "text/csv"]);
        Brief(api.MapPost("/tolerance", ToleranceAsync), "Draws a lot of such pieces: the report as the command tolerance prints it. pieces=100..1000000, seed=0 and on, set=FIELD=VALUE replaces a value of the brief, such as set=process.tolerance_mm=0.03; may be given again.")
            .Produces<Report>();
    }

    private static RouteHandlerBuilder Brief(RouteHandlerBuilder door, string summary) => door
        .WithSummary(summary)
        .Accepts<JsonObject>("application/json")
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status404NotFound)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
        .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task SheetAsync(HttpContext context, PieceShelf shelf, WorkQueue queue, string format = "pdf", string paper = "a4", int? page = null, string? date = null)
    {
        var size = SizeOf(paper);
        var day = date is null ? (DateOnly?)null
            : DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read) ? read
            : throw Unknown("date", date, "a day as YYYY-MM-DD, such as 2026-03-31");
        if (format is not ("pdf" or "svg" or "dxf"))
        {
            throw Unknown("format", format, "pdf, svg or dxf");
        }

        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        if (format == "svg" && page is null)
        {
            await JsonAsync(context, queue, async (stage, stop) => PagesNode(paper, await solved.Papers.SheetAsync(size, day, stage, stop).ConfigureAwait(false))).ConfigureAwait(false);
            return;
        }

        var files = await queue.LongAsync(stop => solved.Papers.SheetAsync(size, day, Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        var (file, type, ending) = format switch
        {
            "pdf" => ("sheet.pdf", "application/pdf", "-sheet.pdf"),
            "dxf" => ("outlines.dxf", "image/vnd.dxf", "-outlines.dxf"),
            _ => (string.Create(CultureInfo.InvariantCulture, $"sheet-{page}.svg"), "image/svg+xml", string.Create(CultureInfo.InvariantCulture, $"-sheet-{page}.svg")),
        };
        await FileAsync(context, files, file, type, FileStem.Of(solved.Brief.Name) + ending).ConfigureAwait(false);
    }

    private static async Task PlateAsync(HttpContext context, PieceShelf shelf, WorkQueue queue, string format = "json", int plate = 1)
    {
        if (format is not ("json" or "3mf" or "csv"))
        {
            throw Unknown("format", format, "json, 3mf or csv");
        }

        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        if (format == "json")
        {
            await JsonAsync(context, queue, async (stage, stop) =>
            {
                var patterns = await solved.CastingAsync(stage, stop).ConfigureAwait(false);
                return PlateView.Of(solved.Brief, patterns, PieceNumbers.ReportNode(Reports.Of(solved.Design) with { Casting = patterns.Report }));
            }).ConfigureAwait(false);
            return;
        }

        var files = await queue.LongAsync(stop => solved.Papers.PlatesAsync(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        var (file, type) = format == "csv" ? ("tree.csv", "text/csv") : (plate == 1 ? "plate.3mf" : string.Create(CultureInfo.InvariantCulture, $"plate-{plate}.3mf"), "model/3mf");
        await FileAsync(context, files, file, type, $"{FileStem.Of(solved.Brief.Name)}-{file}").ConfigureAwait(false);
    }

    private static async Task<IResult> ToleranceAsync(HttpContext context, PieceShelf shelf, WorkQueue queue, int pieces = ToleranceStudy.UsualPieces, long seed = ToleranceStudy.UsualSeed)
    {
        if (pieces is < LeastPieces or > ToleranceStudy.MostPieces)
        {
            throw Unknown("pieces", pieces.ToString(CultureInfo.InvariantCulture), FormattableString.Invariant($"a whole number from {LeastPieces} to {ToleranceStudy.MostPieces}"));
        }

        if (seed < 0)
        {
            throw Unknown("seed", seed.ToString(CultureInfo.InvariantCulture), "a whole number from 0 on");
        }

        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false), [.. context.Request.Query["set"].OfType<string>()]);
        Task<ToleranceReport> Study(CancellationToken stop) => solved.Papers.ToleranceAsync(pieces, seed, Bodies.NoStages, stop);

        // With the walls known it is a matter of a tenth of a second, so a hand on a control need not wait behind a mesh.
        var study = solved.Papers.IsVariationNear
            ? await queue.QuickAsync(Study, context.RequestAborted).ConfigureAwait(false)
            : await queue.LongAsync(Study, context.RequestAborted).ConfigureAwait(false);
        using var text = new MemoryStream();
        ReportJson.Write(Reports.Of(solved.Design) with { Tolerance = study }, text);
        return Results.Bytes(text.ToArray(), "application/json");
    }

    private static JsonObject PagesNode(string paper, IReadOnlyDictionary<string, byte[]> files)
    {
        var pages = Enumerable.Range(1, files.Count).Select(page => files.GetValueOrDefault(string.Create(CultureInfo.InvariantCulture, $"sheet-{page}.svg"))).TakeWhile(page => page is not null);
        return new JsonObject { ["paper"] = paper, ["pages"] = new JsonArray([.. pages.Select(page => JsonValue.Create(Encoding.UTF8.GetString(page!)))]) };
    }

    /// <summary>JSON at the end of long work, with its stages before it for who asks for them.</summary>
    internal static async Task JsonAsync(HttpContext context, WorkQueue queue, Func<IProgress<string>, CancellationToken, Task<JsonObject>> work)
    {
        if (StageLines.AreWanted(context.Request))
        {
            await StageLines.WriteAsync(context, (stage, stop) => queue.LongAsync(token => work(stage, token), stop)).ConfigureAwait(false);
            return;
        }

        var answer = await queue.LongAsync(stop => work(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        await Results.Json(answer).ExecuteAsync(context).ConfigureAwait(false);
    }

    /// <summary>One of some files, to be saved under another name.</summary>
    internal static Task FileAsync(HttpContext context, IReadOnlyDictionary<string, byte[]> files, string file, string type, string name)
        => files.TryGetValue(file, out var bytes)
            ? Results.File(bytes, type, name).ExecuteAsync(context)
            : Problems.WriteAsync(context, StatusCodes.Status404NotFound, "No such file", $"{file} is not among {string.Join(", ", files.Keys)}.");

    /// <summary>A paper by its name in an address.</summary>
    internal static PaperSize SizeOf(string paper) => paper switch { "a4" => PaperSize.A4, "letter" => PaperSize.Letter, _ => throw Unknown("paper", paper, "a4 or letter") };

    private static BadHttpRequestException Unknown(string parameter, string read, string expected) => new($"{parameter}: read {read}, expected {expected}");
}
