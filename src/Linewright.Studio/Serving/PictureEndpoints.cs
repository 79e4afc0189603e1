using System.Text.Json.Nodes;
using Linewright.Studio.Pieces;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>Pictures: ordered, watched while they grow, looked at, stopped, kept.</summary>
internal static class PictureEndpoints
{
    // Told at least so often, so that a connection that broke is noticed; and not oftener than the eye follows.
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1), Pause = TimeSpan.FromMilliseconds(100);

    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/picture", BeginAsync)
            .WithSummary("Begins a picture of the piece and answers at once with where it is. Options as the command picture has them. One is drawn at a time: a new order stops the last one; so does a page that is closed.")
            .Accepts<JsonObject>("application/json")
            .Produces<object>(StatusCodes.Status202Accepted)
            .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/picture", (PictureDesk desk) => Results.Json(new JsonObject { ["latest"] = desk.Latest?.Now().Status.ToJson() }))
            .WithSummary("The picture on the desk, drawn or being drawn; null before the first.").Produces<object>();
        api.MapGet("/picture/{key}", WatchAsync)
            .WithSummary("How far a picture is: pass, samples a pixel, noise, share, seconds gone and left. With Accept: application/x-ndjson a line whenever something has changed, to its end. Who watches keeps it going.")
            .Produces<object>().ProducesProblem(StatusCodes.Status404NotFound);
        api.MapGet("/picture/{key}/view", LookAsync)
            .WithSummary("The picture as it stands, unfiltered while it grows: a PNG of at most 2.1 million pixels, or of all with whole=true.")
            .Produces<byte[]>(contentType: "image/png").ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status409Conflict);
        api.MapGet("/picture/{key}/file", File)
            .WithSummary("The picture to keep: format=png, png16 or pfm (linear light), sent as it is written. One that was stopped says so in its name.")
            .Produces<byte[]>(contentType: "application/octet-stream").ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status409Conflict);
        api.MapDelete("/picture/{key}", StopAsync)
            .WithSummary("Stops a picture; what has been drawn is kept until the next order.").Produces<object>().ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> BeginAsync(HttpContext context, [AsParameters] PictureAsk ask, PieceShelf shelf, PictureDesk desk)
    {
        var solved = shelf.Of(await Bodies.ReadAsync(context).ConfigureAwait(false));
        var order = ask.Read(solved.Design.Chosen!.Count);
        var job = await desk.BeginAsync(solved, order, context.RequestAborted).ConfigureAwait(false);
        var told = job.Now().Status.ToJson();
        context.Response.Headers.Location = told["picture"]!.GetValue<string>();
        return Results.Json(told, statusCode: StatusCodes.Status202Accepted);
    }

    private static async Task WatchAsync(string key, HttpContext context, PictureDesk desk)
    {
        if (desk.Find(key) is not { } job)
        {
            await Gone().ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        using var watching = job.Watch();
        if (!StageLines.AreWanted(context.Request))
        {
            await Results.Json(job.Now().Status.ToJson()).ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        var stop = context.RequestAborted;
        context.Response.ContentType = StageLines.MediaType;
        for (var isEnded = false; !isEnded;)
        {
            var (status, change) = job.Now();
            await StageLines.LineAsync(context, status.ToJson()).ConfigureAwait(false);
            isEnded = status.IsEnded;
            if (!isEnded)
            {
                await Task.WhenAny(change, Task.Delay(Beat, stop)).ConfigureAwait(false);
                await Task.Delay(Pause, stop).ConfigureAwait(false);
            }
        }
    }

    private static async Task<IResult> LookAsync(string key, HttpContext context, PictureDesk desk, Darkroom darkroom, string? whole = null)
    {
        if (desk.Find(key) is not { } job)
        {
            return Gone();
        }

        job.Ask();
        context.Response.Headers.CacheControl = "no-store";
        return await darkroom.LookAsync(job, PictureAsk.Switch("whole", whole, "true", "false", false), context.RequestAborted).ConfigureAwait(false) is { } png ? Results.Bytes(png, "image/png") : Nothing();
    }

    private static IResult File(string key, HttpContext context, PictureDesk desk, Darkroom darkroom, string format = "png")
    {
        if (desk.Find(key) is not { } job)
        {
            return Gone();
        }

        job.Ask();
        var (ending, bits, type) = format switch
        {
            "png" => (".png", 8, "image/png"),
            "png16" => ("-16-bit.png", 16, "image/png"),
            "pfm" => (".pfm", 32, "application/octet-stream"),
            _ => throw new BadHttpRequestException($"format: read {format}, expected png, png16 or pfm"),
        };
        var name = job.FileName(ending);
        if (job.Standing is not { Picture: var picture })
        {
            return Nothing();
        }

        // The writer is a loop of arithmetic on a thread of its own; it waits there for who fetches the file.
        context.Features.GetRequiredFeature<IHttpBodyControlFeature>().AllowSynchronousIO = true;
        return Results.Stream(file => darkroom.FileAsync(picture, name, bits, file, context.RequestAborted), type, name);
    }

    private static async Task<IResult> StopAsync(string key, HttpContext context, PictureDesk desk)
    {
        if (desk.Find(key) is not { } job)
        {
            return Gone();
        }

        await job.StopAsync(context.RequestAborted).ConfigureAwait(false);
        return Results.Json(job.Now().Status.ToJson());
    }

    private static IResult Gone()
        => Results.Problem(title: "No such picture", detail: "It made room for a newer one, or never was.", statusCode: StatusCodes.Status404NotFound);

    private static IResult Nothing()
        => Results.Problem(title: "Nothing to be seen yet", detail: "The first light has not been followed; ask again once view is above 0.", statusCode: StatusCodes.Status409Conflict);
}
