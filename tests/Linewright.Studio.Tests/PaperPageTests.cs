using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>The workshop's papers in the browser: looked at, changed by the brief, saved; each before the axe rules, light and dark.</summary>
public class PaperPageTests(PaperFixture studio) : IClassFixture<PaperFixture>
{
    [Fact]
    public async Task Sheet_and_plate_are_shown_and_come_down_as_files()
    {
        var page = await studio.OpenAsync();
        await LayAsync(page, "sheet");
        await Assertions.Expect(page.Locator(".pages img")).Not.ToHaveCountAsync(0);
        var pages = await page.Locator(".pages img").CountAsync();
        await page.WaitForFunctionAsync("[...document.querySelectorAll('.pages img')].every(page => page.complete && page.naturalWidth > 0)");
        await AccessTests.JudgeAsync(page, "sheet");
        var pdf = await DownAsync(page, "Save PDF");
        Assert.Equal("harbour-lights-sheet.pdf", pdf.Name);
        Assert.Equal("%PDF", Encoding.ASCII.GetString(pdf.Bytes[..4]));
        Assert.Equal("harbour-lights-sheet-2.svg", (await DownAsync(page, "Save page 2 as SVG")).Name);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Letter" }).ClickAsync();
        await CurrentAsync(page);
        await Assertions.Expect(page.Locator(".pages img")).ToHaveCountAsync(pages);
        await Assertions.Expect(page.Locator(".pages img").First).ToHaveAttributeAsync("style", "--width: 279.4mm;"); // Letter across. Standard: ANSI/ASME Y14.1, size A

        await LayAsync(page, "casting");
        await Assertions.Expect(page.Locator("figure use")).ToHaveCountAsync(51); // 48 links, box, tongue, safety
        await JudgeAsync(page, "plate and tree");
        var plate = await DownAsync(page, "Save plate.3mf");
        Assert.Equal("PK", Encoding.ASCII.GetString(plate.Bytes[..2]));

        // The paper follows the brief: fewer parts on a tree are more trees, more stems and buttons, more metal.
        var melt = page.Locator("[data-figure=melt]");
        var before = await NumberAsync(melt);
        await page.GetByRole(AriaRole.Tab, new PageGetByRoleOptions { Name = "Process" }).ClickAsync();
        var field = page.GetByLabel("Parts per tree", new PageGetByLabelOptions { Exact = true });
        await field.FillAsync("26");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByText("2 trees")).ToBeVisibleAsync();
        Assert.True(await NumberAsync(melt) > before + 3);
    }

    [Fact]
    public async Task A_changed_spread_moves_the_yield_at_once()
    {
        // By keyboard, along the strip.
        var page = await studio.OpenAsync();
        await page.Locator("[data-paper=piece]").FocusAsync();
        foreach (var key in (string[])["ArrowRight", "ArrowRight", "ArrowRight", "Enter"])
        {
            await page.Keyboard.PressAsync(key);
        }

        await CurrentAsync(page);
        var yield = page.Locator("[data-figure=yield]");
        var (first, text) = (await NumberAsync(yield), await yield.TextContentAsync());
        await JudgeAsync(page, "tolerance");
        await BrowserFixture.CheckedAsync(page);
        var packets = await page.EvaluateAsync<int>("window.studio.live.figures.previewMs.length");
        var field = page.Locator("#spread-process-tolerance_mm");
        await field.FillAsync("0.12");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(yield).Not.ToHaveTextAsync(text!);
        var second = await NumberAsync(yield);
        Assert.True(second < first - 10, FormattableString.Invariant($"{first} %, with more than twice the spread {second} %"));

        // No surface was made anew for it, and it is a step to undo like any other.
        await CurrentAsync(page);
        Assert.Equal(packets, await page.EvaluateAsync<int>("window.studio.live.figures.previewMs.length"));
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(yield).ToHaveTextAsync(text!);

        // The gap that the study asks for can be taken from it.
        await field.FillAsync("0.08");
        await page.Keyboard.PressAsync("Enter");
        await CurrentAsync(page);
        var tight = await NumberAsync(page.Locator("[data-figure=free]"));
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take both gaps" }).ClickAsync();
        await Assertions.Expect(page.GetByText("The brief has these gaps.")).ToBeVisibleAsync();
        await CurrentAsync(page);
        var roomy = await NumberAsync(page.Locator("[data-figure=free]"));
        Assert.True(tight < 98 && roomy > 98, FormattableString.Invariant($"{tight} %, then {roomy} %"));

        // At twice the size: 1280 pixels at 200 % are 640.
        await page.SetViewportSizeAsync(640, 720);
        Assert.Equal(640, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await AccessTests.JudgeAsync(page, "640 wide");

        // What is behind the paper is out of the tab order, until it is taken away.
        Assert.False(await page.Locator("[data-pose=flat]").IsVisibleAsync());
        await page.Locator("[data-paper=piece]").ClickAsync();
        await Assertions.Expect(page.Locator("[data-pose=flat]")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_reserve_that_is_taken_is_tried_and_leaves_fewer_walls_refused()
    {
        var page = await studio.OpenAsync();
        await LayAsync(page, "tolerance");
        var accepted = page.Locator("[data-figure=accepted]");
        var (before, reserve) = (await NumberAsync(accepted), await page.Locator("[data-figure=reserve]").TextContentAsync());
        await Assertions.Expect(page.GetByText("reckoned, not tried on the solids").First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take the reserve" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Drawn and measured with it")).ToBeVisibleAsync();
        await CurrentAsync(page);
        var after = await NumberAsync(accepted);
        Assert.True(before < 80 && after > 98, FormattableString.Invariant($"{before} %, then {after} %")); // 99 of 100 asked for
        Assert.Equal(reserve, await page.Locator("[data-figure=reserve]").TextContentAsync());
        Assert.Equal(reserve, await page.EvaluateAsync<string>("`${window.studio.brief.values['process.wall_reserve_mm'].toFixed(2)} mm`"));
    }

    [Fact]
    public async Task A_quote_names_a_missing_price_and_has_a_total_once_the_list_is_whole()
    {
        var page = await studio.OpenAsync();
        await LayAsync(page, "quote");
        await AccessTests.JudgeAsync(page, "no list");
        await page.GetByLabel("open a price list").SetInputFilesAsync(new FilePayload { Name = "bare.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(QuoteDoorTests.Bare) });
        await Assertions.Expect(page.Locator(".missing")).ToContainTextAsync("overhead_percent");
        await Assertions.Expect(page.Locator("[data-figure=total]")).ToContainTextAsync("No total");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Client's page (PDF)" })).ToBeDisabledAsync();
        await AccessTests.JudgeAsync(page, "missing prices");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Put it away" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Try with invented prices" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-figure=total]")).ToContainTextAsync("EUR");
        var total = await page.Locator("[data-figure=total]").TextContentAsync();
        var onA4 = await DownAsync(page, "Client's page (PDF)");
        Assert.Equal("harbour-lights-quote-client.pdf", onA4.Name);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Letter" }).ClickAsync();
        var onLetter = (await DownAsync(page, "Client's page (PDF)")).Bytes;
        Assert.NotEqual(onA4.Bytes, onLetter);
        Assert.Contains("/MediaBox [0 0 612 792]", Encoding.Latin1.GetString(onLetter), StringComparison.Ordinal); // 8.5 by 11 inches in points

        // The list is kept in this browser, and read again with the page.
        await page.ReloadAsync();
        await page.WaitForFunctionAsync("window.studio?.stage?.line.packet");
        await LayAsync(page, "quote");
        await Assertions.Expect(page.Locator("[data-figure=total]")).ToHaveTextAsync(total!);

        // Four alternatives; one that is taken is the brief.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Alternatives" }).ClickAsync();
        await page.GetByLabel("Stones, mm").FillAsync("2.5, 3");
        await page.GetByLabel("Lengths laid flat, mm").FillAsync("178");
        await page.Keyboard.PressAsync("Tab");
        await page.GetByText("Metals:").ClickAsync();
        await page.GetByLabel("Platinum 950 with ruthenium").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Quote 4 pieces" }).ClickAsync();
        await Assertions.Expect(page.Locator(".grid td button")).ToHaveCountAsync(4);
        await Assertions.Expect(page.Locator(".grid td button").Nth(1)).ToHaveTextAsync(total!.Replace("EUR", "", StringComparison.Ordinal).Trim());
        await JudgeAsync(page, "alternatives");
        await page.Locator(".grid td button").First.ClickAsync();
        await Assertions.Expect(page.Locator(".sentence")).ToContainTextAsync("2.50 mm");
        Assert.Empty(studio.Browser.Abroad);
    }

    private static async Task LayAsync(IPage page, string paper)
    {
        await page.Locator($"[data-paper={paper}]").ClickAsync();
        await CurrentAsync(page);
    }

    private static Task CurrentAsync(IPage page) => Assertions.Expect(page.Locator(".paper")).ToHaveAttributeAsync("aria-busy", "false");

    // "98.1 %" as a number.
    private static async Task<double> NumberAsync(ILocator figure) => double.Parse((await figure.TextContentAsync())!.Split(' ')[0], CultureInfo.InvariantCulture);

    private static async Task<(string Name, byte[] Bytes)> DownAsync(IPage page, string button)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = button }).ClickAsync());
        return (download.SuggestedFilename, await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken));
    }

    // In both lights, and back.
    private static async Task JudgeAsync(IPage page, string state)
    {
        await AccessTests.JudgeAsync(page, state);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Darken" }).ClickAsync();
        await AccessTests.JudgeAsync(page, state + ", dark");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Lighten" }).ClickAsync();
    }
}
