using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Linewright.Studio.Shelf;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Linewright.Studio.Serving;

/// <summary>Briefs in the studio's folder: list, read, save, and the working copy beside each.</summary>
internal static class FileEndpoints
{
    /// <summary>Adds the doors.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/files", (BriefFolder folder, StudioOptions options) => Results.Json(new JsonObject
        {
            ["folder"] = Path.GetFileName(folder.Path),
            ["opened"] = options.Brief,
            ["untitled_working"] = folder.Working(BriefFolder.Untitled) is not null,
            ["files"] = new JsonArray(
            [
                .. folder.List().Select(file => new JsonObject { ["name"] = file.Name, ["changed"] = file.Changed.ToString("o", System.Globalization.CultureInfo.InvariantCulture), ["bytes"] = file.Bytes, ["working"] = file.HasWorking }),
            ]),
        })).WithSummary("The briefs in the folder, last changed first.").Produces<object>();
        api.MapGet("/files/{name}", (string name, BriefFolder folder) =>
        {
            var (text, tag) = folder.Read(name);
            return Results.Json(new JsonObject { ["name"] = name, ["text"] = Text(text), ["tag"] = tag, ["working"] = folder.Working(name) is { } working ? Text(working) : null });
        }).WithSummary("A brief, its tag, and the newer work beside it where there is some.").Produces<object>().ProducesProblem(404);
        api.MapPut("/files/{name}", SaveAsync)
            .WithSummary("Saves a brief, whole or not at all. If-Match has the tag that was read, or * to write over what is there; without it the name must be new.")
            .Accepts<JsonObject>("application/json").Produces<object>().ProducesProblem(400).ProducesProblem(412);
        api.MapGet("/working/{name}", (string name, BriefFolder folder) => folder.Working(name) is { } working
                ? Results.Bytes(working, "application/json")
                : throw new FileRefusedException(name, "no work is kept under this name", IsMissing: true))
            .WithSummary("The working copy kept beside a brief.").Produces<object>().ProducesProblem(404);
        api.MapPut("/working/{name}", KeepAsync)
            .WithSummary("Keeps a working copy beside a brief.").Accepts<JsonObject>("application/json").Produces(204).ProducesProblem(400);
        api.MapDelete("/working/{name}", (string name, BriefFolder folder) =>
        {
            folder.Drop(name);
            return Results.NoContent();
        }).WithSummary("Clears the working copy away.").Produces(204);
    }

    private static async Task<IResult> SaveAsync(string name, HttpContext context, BriefFolder folder)
    {
        var text = await ObjectAsync(name, context).ConfigureAwait(false);
        var tag = context.Request.Headers.IfMatch.ToString().Trim('"');
        var saved = folder.Save(name, text, tag.Length == 0 ? null : tag);
        folder.Drop(name);
        return Results.Json(new JsonObject { ["name"] = name, ["tag"] = saved });
    }

    private static async Task<IResult> KeepAsync(string name, HttpContext context, BriefFolder folder)
    {
        folder.Keep(name, await ObjectAsync(name, context).ConfigureAwait(false));
        return Results.NoContent();
    }

    // A brief in the making may still have faults, but it is always an object: nothing else is written to the folder.
    private static async Task<byte[]> ObjectAsync(string name, HttpContext context)
    {
        var text = await Bodies.ReadAsync(context).ConfigureAwait(false);
        try
        {
            using var json = JsonDocument.Parse(text);
            return json.RootElement.ValueKind == JsonValueKind.Object ? text : throw new FileRefusedException(name, "the text is no JSON object");
        }
        catch (JsonException slip)
        {
            throw new FileRefusedException(name, FormattableString.Invariant($"the text is no JSON, line {slip.LineNumber + 1}"));
        }
    }

    private static string Text(byte[] utf8) => Encoding.UTF8.GetString(utf8);
}
