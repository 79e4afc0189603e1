using Microsoft.AspNetCore.Http;

namespace Linewright.Studio.Serving;

/// <summary>Request bodies and answers of this interface.</summary>
internal static class Bodies
{
    /// <summary>The whole body; the server's own limit ends one that is too large.</summary>
    public static async Task<byte[]> ReadAsync(HttpContext context)
    {
        using var bytes = new MemoryStream();
        await context.Request.Body.CopyToAsync(bytes, context.RequestAborted).ConfigureAwait(false);
        return bytes.ToArray();
    }

    /// <summary>Where nobody wants to hear of stages.</summary>
    public static IProgress<string> NoStages { get; } = new Deaf();

    private sealed class Deaf : IProgress<string>
    {
        public void Report(string value)
        {
            // Nobody listens.
        }
    }
}
