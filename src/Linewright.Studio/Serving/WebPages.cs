using System.Collections.Frozen;
using Microsoft.AspNetCore.Http;

namespace Linewright.Studio.Serving;

/// <summary>The pages, which lie in this assembly; and a page that says what is missing where it was built without node.</summary>
internal static class WebPages
{
    private const string Root = "web/";

    private static readonly System.Reflection.Assembly Here = typeof(WebPages).Assembly;

    private static readonly FrozenDictionary<string, string> Names = Here.GetManifestResourceNames()
        .Where(name => name.StartsWith(Root, StringComparison.Ordinal))
        .ToFrozenDictionary(name => "/" + name[Root.Length..], name => name, StringComparer.Ordinal);

    /// <summary>True where the pages were built.</summary>
    public static bool AreThere => Names.ContainsKey("/index.html");

    /// <summary>Answers a request for a page or a file of it.</summary>
    public static async Task AnswerAsync(HttpContext context)
    {
        var path = context.Request.Path.Value is null or "/" ? "/index.html" : context.Request.Path.Value;
        if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method))
        {
            await Problems.WriteAsync(context, StatusCodes.Status405MethodNotAllowed, "Only to be read", "Pages can only be fetched.").ConfigureAwait(false);
            return;
        }

        if (Names.GetValueOrDefault(path) is not { } name)
        {
            await (path == "/index.html" ? MissingAsync(context) : Problems.WriteAsync(context, StatusCodes.Status404NotFound, "No such page", $"{path} is no page of the studio.")).ConfigureAwait(false);
            return;
        }

        // Files under assets bear a hash of their content in their name.
        context.Response.Headers.CacheControl = path.StartsWith("/assets/", StringComparison.Ordinal) ? "public, max-age=31536000, immutable" : "no-cache";
        context.Response.ContentType = Path.GetExtension(path) switch
        {
            ".html" => "text/html; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".css" => "text/css; charset=utf-8",
            ".woff2" => "font/woff2",
            ".svg" => "image/svg+xml",
            _ => "application/octet-stream",
        };
        using var file = Here.GetManifestResourceStream(name)!;
        context.Response.ContentLength = file.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await file.CopyToAsync(context.Response.Body, context.RequestAborted).ConfigureAwait(false);
        }
    }

    private static async Task MissingAsync(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(
            """
            <!doctype html><html lang="en"><head><meta charset="utf-8"><title>Linewright studio</title>
            <style>body{font:1.1rem/1.6 system-ui,sans-serif;max-width:38rem;margin:18vh auto;padding:0 1.5rem;background:#fbfaf8;color:#2b2a28}code{background:#eceae6;padding:.1em .35em}</style></head>
            <body><h1>The studio has no pages yet</h1>
            <p>It was built on a machine without node, so there is nothing to show here. Install <strong>node 20 or later with npm</strong>, then build again:</p>
            <p><code>dotnet build src/Linewright.Studio</code></p>
            <p>Everything else works as it is: the <a href="/api/openapi.json">interface for programs</a> and the command line.</p></body></html>
            """,
            context.RequestAborted).ConfigureAwait(false);
    }
}
