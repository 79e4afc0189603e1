using System.Text.Json.Nodes;
using Linewright.Staging;
using Linewright.Studio.Pieces;
using Linewright.Studio.Wire;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>Everything that the command make writes, as one archive.</summary>
internal static class ExportEndpoints
{
    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/export", ExportAsync)
            .WithSummary("Builds, checks and writes every file that make writes, as a zip. With Accept: application/x-ndjson, lines of JSON with progress and at the end the address to fetch the zip from.")
            .Accepts<JsonObject>("application/json")
            .Produces<byte[]>(contentType: "application/zip")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/export/{key}", (string key, ReadyFiles ready) => ready.Take(key) is { } file
                ? Results.File(file.Bytes, "application/zip", file.Name)
                : Results.Problem(title: "No such archive", detail: "It has been fetched already, or newer ones took its place.", statusCode: StatusCodes.Status404NotFound))
            .WithSummary("Hands a finished archive out, once.")
            .Produces<byte[]>(contentType: "application/zip")
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task ExportAsync(HttpContext context, PieceShelf shelf, WorkQueue queue, ReadyFiles ready)
    {
        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        var name = PictureWords.Stem(solved.Brief.Name) + ".zip";
        if (StageLines.AreWanted(context.Request))
        {
            await StageLines.WriteAsync(context, async (stage, stop) =>
            {
                var zip = await queue.LongAsync(token => ZipAsync(solved, stage, token), stop).ConfigureAwait(false);
                return new JsonObject { ["ready"] = $"/api/export/{ready.Keep(name, zip)}", ["name"] = name, ["bytes"] = zip.Length };
            }).ConfigureAwait(false);
            return;
        }

        var bytes = await queue.LongAsync(stop => ZipAsync(solved, Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        await Results.File(bytes, "application/zip", name).ExecuteAsync(context).ConfigureAwait(false);
    }

    private static async Task<byte[]> ZipAsync(SolvedPiece solved, IProgress<string> stage, CancellationToken stop)
    {
        var report = await solved.ReportAsync(stage, stop).ConfigureAwait(false);
        var made = await solved.MadeAsync(stage, stop).ConfigureAwait(false);
        var casting = await solved.CastingAsync(stage, stop).ConfigureAwait(false);
        return PieceZip.Write(made, casting, report with { Casting = casting.Report }, stage, stop);
    }
}
