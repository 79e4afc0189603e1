using System.Net.Http.Headers;
using System.Text;
using Linewright.Studio.Serving;
using Microsoft.AspNetCore.Builder;

[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]

namespace Linewright.Studio.Tests;

/// <summary>A studio on a port of its own, with a folder of its own, and briefs to send it.</summary>
public sealed class StudioFixture : IAsyncLifetime
{
    /// <summary>A sound brief.</summary>
    public const string Sound = """
        { "name": "Short tide", "stone": { "species": "sapphire", "diameter_mm": 2.6 }, "metal": "gold-750-yellow", "length": { "laid_flat_mm": 160 } }
        """;

    /// <summary>The same with claws that are too thin.</summary>
    public const string ThinClaws = """
        { "name": "Thin claws", "stone": { "diameter_mm": 3 }, "metal": "gold-750-white-pd", "length": { "laid_flat_mm": 178 }, "setting": { "claw_mm": 0.5 } }
        """;

    /// <summary>The server.</summary>
    public WebApplication App { get; private set; } = null!;

    /// <summary>Its folder of briefs.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("linewright-studio-").FullName;

    /// <summary>Its address, with a slash at the end.</summary>
    public string Address => StudioServer.AddressOf(App);

    /// <summary>A client at that address.</summary>
    public HttpClient Client { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await File.WriteAllTextAsync(Path.Combine(Folder, "short-tide.json"), Sound);
        await File.WriteAllTextAsync(Path.Combine(Folder, "thin-claws.json"), ThinClaws);
        App = await StudioServer.StartAsync(new StudioOptions { Folder = Folder, Port = 0, Out = TextWriter.Null }, CancellationToken.None);
        Client = new HttpClient { BaseAddress = new Uri(Address), Timeout = TimeSpan.FromMinutes(4) };
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await App.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>Sends a brief to a door.</summary>
    public Task<HttpResponseMessage> PostAsync(string door, string brief, CancellationToken stop = default)
        => Client.PostAsync(door, Json(brief), stop);

    /// <summary>Text as a JSON body.</summary>
    public static HttpContent Json(string text)
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes(text));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        return content;
    }
}
