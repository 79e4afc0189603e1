using Microsoft.AspNetCore.Http;

namespace Linewright.Studio.Serving;

/// <summary>Lets nobody in but pages of this very server and programs on this machine.</summary>
/// <remarks>
/// A page from elsewhere that the same person has open could call a server on the loopback address. It is told apart by
/// its Origin; one that renames its own host to 127.0.0.1 by its Host.
/// </remarks>
internal static class Gate
{
    /// <summary>The middleware.</summary>
    public static async Task GuardAsync(HttpContext context, RequestDelegate next)
    {
        var (request, response) = (context.Request, context.Response);
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers["Referrer-Policy"] = "no-referrer";
        response.Headers["Cross-Origin-Opener-Policy"] = "same-origin";
        response.Headers["Cross-Origin-Resource-Policy"] = "same-origin";
        response.Headers.ContentSecurityPolicy =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; font-src 'self'; img-src 'self' data: blob:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
        if (!IsOurHost(request.Host, context.Connection.LocalPort))
        {
            await Problems.WriteAsync(context, StatusCodes.Status421MisdirectedRequest, "Not this host", $"Asked for the host {request.Host.Value}; this server only answers to 127.0.0.1 and localhost.").ConfigureAwait(false);
            return;
        }

        var origin = request.Headers.Origin.ToString();
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var isPage = HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate";
        if ((origin.Length > 0 && origin != $"{request.Scheme}://{request.Host.Value}") || (site is "cross-site" or "same-site" && !isPage))
        {
            await Problems.WriteAsync(context, StatusCodes.Status403Forbidden, "Not from elsewhere", "Only pages of this server may call it.").ConfigureAwait(false);
            return;
        }

        await next(context).ConfigureAwait(false);
    }

    private static bool IsOurHost(HostString host, int port)
        => host.Host is "127.0.0.1" or "localhost" or "[::1]" && (host.Port ?? 80) == port;
}
