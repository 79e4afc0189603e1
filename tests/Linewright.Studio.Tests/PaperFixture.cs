using Linewright.Studio.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>A studio that opens with the demo piece on coarse meshes: papers are tried on it, not surfaces.</summary>
public sealed class PaperFixture : IAsyncLifetime
{
    private const string File = "coarse.json";

    private const string Brief = """
        { "name": "Harbour lights", "stone": { "species": "diamond", "diameter_mm": 3.0 }, "metal": "gold-750-white-pd", "length": { "laid_flat_mm": 178.0 }, "process": { "mesh_deviation_um": 40 } }
        """;

    private WebApplication? app;
    private IPage? last;

    /// <summary>The browser.</summary>
    public BrowserFixture Browser { get; } = new();

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await Browser.InitializeAsync();
        await System.IO.File.WriteAllTextAsync(Path.Combine(Browser.Studio.Folder, File), Brief);
        app = await StudioServer.StartAsync(new StudioOptions { Folder = Browser.Studio.Folder, Brief = File, Port = 0, Out = TextWriter.Null }, CancellationToken.None);
    }

    /// <summary>Opens the piece in a fresh profile, as it is in its file.</summary>
    public async Task<IPage> OpenAsync()
    {
        // Nothing that an earlier test left on the bench.
        await (last?.Context.CloseAsync() ?? Task.CompletedTask);
        System.IO.File.Delete(Path.Combine(Browser.Studio.Folder, $".{File}.working"));
        return last = await Browser.OpenAsync(StudioServer.AddressOf(app!));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await (app?.DisposeAsync() ?? ValueTask.CompletedTask);
        await Browser.DisposeAsync();
    }
}
