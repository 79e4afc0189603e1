using System.Net;
using Linewright.Studio.Pieces;
using Linewright.Studio.Shelf;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Linewright.Studio.Serving;

/// <summary>The studio's server: the chain from brief to files over HTTP, and the pages. Bound to the loopback address only.</summary>
public static class StudioServer
{
    // A request that stands still is dropped. A brief is at most 1 MiB; a little more lets the reader say so itself.
    private const long LargestBody = (1 << 20) + 4096;

    private static readonly TimeSpan HeaderTime = TimeSpan.FromSeconds(10);

    /// <summary>Starts the server.</summary>
    /// <exception cref="IOException">The port asked for is in use.</exception>
    public static async Task<WebApplication> StartAsync(StudioOptions options, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(options);
        var app = Build(options, options.Port ?? StudioOptions.UsualPort);
        try
        {
            await app.StartAsync(stop).ConfigureAwait(false);
        }
        catch (IOException) when (options.Port is null)
        {
            await app.DisposeAsync().ConfigureAwait(false);
            app = Build(options, 0);
            await app.StartAsync(stop).ConfigureAwait(false);
        }

        return app;
    }

    /// <summary>Starts, says where, opens a browser where asked to, and serves until it is stopped.</summary>
    public static async Task RunAsync(StudioOptions options, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(options);
        var app = await StartAsync(options, stop).ConfigureAwait(false);
        await using (app.ConfigureAwait(false))
        {
            var address = AddressOf(app);
            await options.Out.WriteLineAsync($"Linewright studio: {address}").ConfigureAwait(false);
            await options.Out.WriteLineAsync($"Briefs are read and written in {options.Folder}. Ctrl+C ends it.").ConfigureAwait(false);
            if (!WebPages.AreThere)
            {
                await options.Out.WriteLineAsync("Built without node: the pages are missing, the address says what to install.").ConfigureAwait(false);
            }

            await options.Out.FlushAsync(stop).ConfigureAwait(false);
            WarmUp.Begin(app.Services.GetRequiredService<PieceShelf>(), stop);
            if (options.OpensBrowser)
            {
                Browser.Open(address);
            }

            var ended = new TaskCompletionSource();
            using var asked = stop.Register(ended.SetResult);
            await ended.Task.ConfigureAwait(false);
            await app.StopAsync(CancellationToken.None).ConfigureAwait(false);
        }
    }

    /// <summary>The address of a started server, with its slash.</summary>
    public static string AddressOf(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
        return addresses.First().TrimEnd('/') + "/";
    }

    private static WebApplication Build(StudioOptions options, int port)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [], ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production" });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(IPAddress.Loopback, port);
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBody;
            kestrel.Limits.RequestHeadersTimeout = HeaderTime;
            kestrel.Limits.MaxConcurrentConnections = 64;
        });
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton(new BriefFolder(options.Folder));
        builder.Services.AddSingleton<PieceShelf>();
        builder.Services.AddSingleton<WorkQueue>();
        builder.Services.AddSingleton<ReadyFiles>();
        builder.Services.AddSingleton<BackThreads>();
        builder.Services.AddSingleton<PictureDesk>();
        builder.Services.AddSingleton<Darkroom>();
        builder.Services.AddSingleton<GridShelf>();
        builder.Services.AddOpenApi("v1", OpenApiWords.Configure);
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(2));
        var app = builder.Build();
        app.Use(Gate.GuardAsync);
        app.Use(Problems.CatchAsync);
        app.UseRouting();
        var api = app.MapGroup("/api");
        TableEndpoints.Map(api);
        PieceEndpoints.Map(api);
        ExportEndpoints.Map(api);
        WorkshopEndpoints.Map(api);
        QuoteEndpoints.Map(api);
        FileEndpoints.Map(api);
        PictureEndpoints.Map(api);
        app.MapOpenApi("/api/openapi.json").WithMetadata(new ExcludeFromDescriptionAttribute());
        api.MapFallback("{*path}", Problems.NoSuchDoor).WithMetadata(new ExcludeFromDescriptionAttribute());
        app.MapFallback("{*path}", WebPages.AnswerAsync).WithMetadata(new ExcludeFromDescriptionAttribute());
        return app;
    }
}
