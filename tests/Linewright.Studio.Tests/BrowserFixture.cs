using Linewright.Studio.Serving;
using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>Chromium without a screen, and a studio for it. Skips, with the reason, where there is no browser or no page.</summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private const string Chromium = "/usr/bin/chromium";

    // Software GL, so that it draws without a graphics card; and nothing that would call home.
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>The studio that pages are opened on.</summary>
    public StudioFixture Studio { get; } = new();

    /// <summary>Addresses that pages asked for outside this machine.</summary>
    public List<string> Abroad { get; } = [];

    /// <summary>Why there is nothing to test; empty where there is.</summary>
    public static string Missing => !File.Exists(Chromium) ? $"skipped: no {Chromium} on this machine"
        : !WebPages.AreThere ? "skipped: the studio was built without node, so it has no pages"
        : "";

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        await Studio.InitializeAsync();
        if (Missing.Length > 0)
        {
            return;
        }

        // Software GL on a shared machine: a page may keep its tester waiting.
        Assertions.SetDefaultExpectTimeout(60_000);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Chromium, Args = Flags, Headless = true });
    }

    /// <summary>Opens the studio in a fresh profile and waits for the first surfaces.</summary>
    /// <param name="address">Another studio's address; this fixture's where null.</param>
    /// <param name="isDark">True for a person who likes the dark.</param>
    /// <param name="width">Width of the window.</param>
    public async Task<IPage> OpenAsync(string? address = null, bool isDark = false, int width = 1280)
    {
        Assert.SkipWhen(Missing.Length > 0, Missing);

        // What an earlier test left on the bench would rightly be brought back.
        File.Delete(Path.Combine(Studio.Folder, ".untitled.json.working"));
        var context = await browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = 720 },
            ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
            AcceptDownloads = true,
            BypassCSP = true, // the waiting below is evaluated text, which the page's own policy rightly refuses
        });
        context.SetDefaultTimeout(120_000);
        var page = await context.NewPageAsync();
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url) is { Scheme: "http" or "https", IsLoopback: false })
            {
                Abroad.Add(request.Url);
            }
        };
        await page.GotoAsync(address ?? Studio.Address);
        await page.WaitForFunctionAsync("window.studio?.stage?.line.packet");
        return page;
    }

    /// <summary>Waits until the checks belong to the brief on screen.</summary>
    public static Task CheckedAsync(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        return page.WaitForFunctionAsync("window.studio.live.isCurrent");
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        await Studio.DisposeAsync();
    }
}
