using System.Text.Json;
using System.Text.Json.Nodes;
using Linewright.Brief;
using Linewright.Studio.Pieces;
using Linewright.Studio.Shelf;
using Microsoft.AspNetCore.Http;

namespace Linewright.Studio.Serving;

/// <summary>Every error as application/problem+json, with what was asked, why it cannot be, and the place in the brief.</summary>
/// <remarks>Source: Nottingham, Wilde and Dalal (2023), RFC 9457, Problem Details for HTTP APIs.</remarks>
internal static class Problems
{
    // Nobody is left to read it. Common practice: what proxies log for a client that has gone.
    private const int ClientGone = 499;

    /// <summary>The middleware.</summary>
    public static async Task CatchAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            context.Response.StatusCode = context.Response.HasStarted ? context.Response.StatusCode : ClientGone;
        }
#pragma warning disable CA1031 // The last door: whatever went wrong, the caller gets a sentence and no trace.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            var (status, title, detail, more) = Of(fault);
            await WriteAsync(context, status, title, detail, more).ConfigureAwait(false);
        }
    }

    /// <summary>What went wrong, in words, and what goes with it.</summary>
    public static (int Status, string Title, string Detail, JsonObject? More) Of(Exception fault) => fault switch
    {
        BriefRefusedException refused => (StatusCodes.Status400BadRequest, "The brief has faults", refused.Faults[0].Describe("brief"), new JsonObject { ["faults"] = Faults(refused.Faults) }),
        LineRefusedException refused => (
            StatusCodes.Status422UnprocessableEntity, "No line closes", refused.Message,
            new JsonObject { ["nearest_shorter_mm"] = refused.NearestShorterMm, ["nearest_longer_mm"] = refused.NearestLongerMm }),
        PricesRefusedException { Faults.Count: > 0 } refused => (StatusCodes.Status400BadRequest, "The price list has faults", refused.Message, new JsonObject { ["faults"] = Faults(refused.Faults) }),
        PricesRefusedException refused => (
            StatusCodes.Status422UnprocessableEntity, "Prices are missing", refused.Message,
            new JsonObject { ["missing"] = new JsonArray([.. refused.Missing.Select(price => new JsonObject { ["path"] = price.Path, ["needed"] = price.Needed })]) }),
        FileRefusedException refused => (
            refused.IsMissing ? StatusCodes.Status404NotFound : refused.IsConflict ? StatusCodes.Status412PreconditionFailed : StatusCodes.Status400BadRequest,
            "Not with this file", refused.Message, new JsonObject { ["path"] = refused.Name }),
        BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } => (
            StatusCodes.Status413PayloadTooLarge, "Not a request that this door takes", "A brief is a page of JSON, at most 1 MiB.", null),
        BadHttpRequestException slip => (slip.StatusCode, "Not a request that this door takes", slip.Message, null),
        OperationCanceledException => (StatusCodes.Status504GatewayTimeout, "Took too long", "The computation was stopped at its time limit.", null),
        IOException or UnauthorizedAccessException => (StatusCodes.Status500InternalServerError, "The disk refuses", fault.Message, null),
        _ => (StatusCodes.Status500InternalServerError, "A fault of ours", fault.Message.ReplaceLineEndings(" "), null),
    };

    /// <summary>For requests under /api that no door takes.</summary>
    public static Task NoSuchDoor(HttpContext context)
    {
        // A body of another type passes every door by and ends here.
        var request = context.Request;
        return (HttpMethods.IsPost(request.Method) || HttpMethods.IsPut(request.Method)) && !request.HasJsonContentType()
            ? WriteAsync(context, StatusCodes.Status415UnsupportedMediaType, "Not JSON", "A brief is sent with Content-Type: application/json.")
            : WriteAsync(context, StatusCodes.Status404NotFound, "No such door", $"{request.Method} {request.Path} is not part of this interface; /api/openapi.json lists what is.");
    }

    /// <summary>Writes a problem, unless an answer has begun.</summary>
    public static async Task WriteAsync(HttpContext context, int status, string title, string detail, JsonObject? more = null)
    {
        if (context.Response.HasStarted)
        {
            context.Abort();
            return;
        }

        context.Response.Clear();
        context.Response.StatusCode = status;
        context.Response.ContentType = "application/problem+json";
        await context.Response.Body.WriteAsync(JsonSerializer.SerializeToUtf8Bytes(Node(context, status, title, detail, more)), context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>A problem as JSON.</summary>
    public static JsonObject Node(HttpContext context, int status, string title, string detail, JsonObject? more)
    {
        var problem = new JsonObject
        {
            ["type"] = "about:blank",
            ["title"] = title,
            ["status"] = status,
            ["detail"] = detail,
            ["instance"] = context.Request.Path.Value,
        };
        foreach (var (key, value) in more ?? [])
        {
            problem[key] = value?.DeepClone();
        }

        return problem;
    }

    private static JsonArray Faults(IReadOnlyList<BriefFault> faults) => new(
    [
        .. faults.Select(fault => new JsonObject
        {
            ["path"] = fault.Path,
            ["line"] = fault.Line,
            ["column"] = fault.Column,
            ["reason"] = $"read {fault.Read}, expected {fault.Expected}",
            ["hint"] = fault.Hint,
        }),
    ]);
}
