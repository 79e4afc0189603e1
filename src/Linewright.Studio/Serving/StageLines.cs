using System.Text.Json;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http;

namespace Linewright.Studio.Serving;

/// <summary>A long answer as lines of JSON: a line a stage while the work goes on, then the result, or the problem under that name.</summary>
internal static class StageLines
{
    /// <summary>The media type of lines of JSON.</summary>
    public const string MediaType = "application/x-ndjson";

    /// <summary>True where the caller wants to hear of progress.</summary>
    public static bool AreWanted(HttpRequest request) => request.Headers.Accept.ToString().Contains(MediaType, StringComparison.Ordinal);

    /// <summary>Runs the work and writes its stages as they come.</summary>
    public static async Task WriteAsync(HttpContext context, Func<IProgress<string>, CancellationToken, Task<JsonObject>> work)
    {
        var stop = context.RequestAborted;
        var stages = Channel.CreateUnbounded<string>();
        var working = Task.Run(
            async () =>
            {
                try
                {
                    return await work(new Teller(stages.Writer), stop).ConfigureAwait(false);
                }
                finally
                {
                    stages.Writer.Complete();
                }
            },
            stop);
        context.Response.ContentType = MediaType;
        await foreach (var stage in stages.Reader.ReadAllAsync(stop).ConfigureAwait(false))
        {
            await LineAsync(context, new JsonObject { ["stage"] = stage }).ConfigureAwait(false);
        }

        await LineAsync(context, await EndAsync(context, working).ConfigureAwait(false)).ConfigureAwait(false);
    }

    // Once a stage has been told the status has gone out: what goes wrong then is told as the last line.
    private static async Task<JsonObject> EndAsync(HttpContext context, Task<JsonObject> working)
    {
        try
        {
            return await working.ConfigureAwait(false);
        }
#pragma warning disable CA1031 // Whatever went wrong: the caller hears of it, or is gone.
        catch (Exception fault) when (context.Response.HasStarted && !context.RequestAborted.IsCancellationRequested)
#pragma warning restore CA1031
        {
            var (status, title, detail, more) = Problems.Of(fault);
            return new JsonObject { ["problem"] = Problems.Node(context, status, title, detail, more) };
        }
    }

    /// <summary>Writes a line and sends it off.</summary>
    public static async Task LineAsync(HttpContext context, JsonObject line)
    {
        await context.Response.Body.WriteAsync((byte[])[.. JsonSerializer.SerializeToUtf8Bytes(line), (byte)'\n'], context.RequestAborted).ConfigureAwait(false);
        await context.Response.Body.FlushAsync(context.RequestAborted).ConfigureAwait(false);
    }

    private sealed class Teller(ChannelWriter<string> stages) : IProgress<string>
    {
        public void Report(string value) => stages.TryWrite(value);
    }
}
