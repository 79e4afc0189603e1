using System.Text.Json.Nodes;
using Linewright.Checks;
using Linewright.Making;
using Linewright.Parts;
using Linewright.Studio.Pieces;
using Linewright.Studio.Wire;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>The chain: each takes a brief as its body and answers with what the chain makes of it.</summary>
internal static class PieceEndpoints
{
    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        Brief(api.MapPost("/plan", PlanAsync), "Every layout that closes, best first: the report as the command plan prints it.").Produces<Report>();
        Brief(api.MapPost("/piece", NumbersAsync), "The numbers of the piece in a few milliseconds: layout, derived measures, the counts just outside.").Produces<object>();
        Brief(api.MapPost("/weigh", WeighAsync), "Builds the parts and weighs them: the report as the command weigh prints it.").Produces<Report>();
        Brief(api.MapPost("/checks", CheckAsync), "Builds, measures and weighs: the whole report, and for each finding its places on the parts. As lines of JSON with progress where asked for by Accept: application/x-ndjson.").Produces<object>();
        Brief(api.MapPost("/flex", FlexAsync), "How one joint turns: limits each way, what meets there, and the axis.").Produces<object>();
        Brief(api.MapPost("/mesh", MeshAsync), "Surfaces of the unique parts, poses, and the stone's facets as one block of bytes. quality=moving|still|close, state=set|cast, parts=link,box,...")
            .Produces<byte[]>(contentType: "application/octet-stream");
    }

    private static RouteHandlerBuilder Brief(RouteHandlerBuilder door, string summary) => door
        .WithSummary(summary)
        .Accepts<JsonObject>("application/json")
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
        .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> PlanAsync(HttpContext context, PieceShelf shelf)
        => ReportResult(Reports.Of(shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false)).Design));

    private static async Task<IResult> NumbersAsync(HttpContext context, PieceShelf shelf)
        => Results.Json(PieceNumbers.Of(shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false))));

    private static async Task<IResult> WeighAsync(HttpContext context, PieceShelf shelf, WorkQueue queue)
    {
        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        var made = await queue.LongAsync(stop => solved.MadeAsync(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        return ReportResult(Reports.Of(made));
    }

    private static async Task CheckAsync(HttpContext context, PieceShelf shelf, WorkQueue queue)
    {
        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        if (StageLines.AreWanted(context.Request))
        {
            await StageLines.WriteAsync(context, (stage, stop) => queue.LongAsync(token => CheckedAsync(solved, stage, token), stop)).ConfigureAwait(false);
            return;
        }

        var answer = await queue.LongAsync(stop => CheckedAsync(solved, Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        await Results.Json(answer).ExecuteAsync(context).ConfigureAwait(false);
    }

    private static async Task<JsonObject> CheckedAsync(SolvedPiece solved, IProgress<string> stage, CancellationToken stop)
    {
        var report = await solved.ReportAsync(stage, stop).ConfigureAwait(false);
        var model = await solved.ModelAsync(stage, stop).ConfigureAwait(false);
        return new JsonObject
        {
            ["report"] = PieceNumbers.ReportNode(report),
            ["places"] = new JsonArray([.. report.Findings.Select(finding => FlexReport.Spots(FindingPlaces.Of(model, finding)))]),
        };
    }

    private static async Task<IResult> FlexAsync(HttpContext context, PieceShelf shelf, WorkQueue queue)
    {
        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        var model = await queue.LongAsync(stop => solved.ModelAsync(Bodies.NoStages, stop), context.RequestAborted).ConfigureAwait(false);
        return Results.Json(FlexReport.Of(HingeMotion.Of(model)));
    }

    private static async Task<IResult> MeshAsync(HttpContext context, PieceShelf shelf, WorkQueue queue, string quality = "still", string state = "set", string? parts = null)
    {
        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        var asked = state switch { "set" => PartState.AsSet, "cast" => PartState.AsCast, _ => throw Unknown("state", state, "set or cast") };
        var roles = parts?.Split(',').Select(name => MeshPacket.Role(name) ?? throw Unknown("parts", name, "link, box, tongue, safety or pin")).ToHashSet();
        var stop = context.RequestAborted;
        var packet = quality switch
        {
            "still" => await queue.LongAsync(async token => MeshPacket.Pack(solved, asked, quality, await PieceView.StillAsync(solved, asked, roles, Bodies.NoStages, token).ConfigureAwait(false)), stop).ConfigureAwait(false),
            "close" => await queue.LongAsync(token => Task.FromResult(MeshPacket.Pack(solved, asked, quality, PieceView.Close(solved, asked, roles, token))), stop).ConfigureAwait(false),
            "moving" => await queue.QuickAsync(token => Task.FromResult(MeshPacket.Pack(solved, asked, quality, PieceView.Moving(solved, asked, roles, token))), stop).ConfigureAwait(false),
            _ => throw Unknown("quality", quality, "moving, still or close"),
        };
        return Results.Bytes(packet, "application/octet-stream");
    }

    private static BadHttpRequestException Unknown(string parameter, string read, string expected)
        => new($"{parameter}: read {read}, expected {expected}");

    private static IResult ReportResult(Report report)
    {
        using var text = new MemoryStream();
        ReportJson.Write(report, text);
        return Results.Bytes(text.ToArray(), "application/json");
    }
}
