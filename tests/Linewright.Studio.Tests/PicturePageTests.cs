using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>A picture taken from the page, as a designer would.</summary>
public class PicturePageTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    [Fact]
    public async Task A_picture_is_taken_watched_stopped_and_saved()
    {
        var page = await browser.OpenAsync();
        await OpenAsync(page);
        await page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "One link" }).CheckAsync();
        await page.GetByLabel("Size", new PageGetByLabelOptions { Exact = true }).SelectOptionAsync("own");
        await page.GetByLabel("Width, pixels").FillAsync("240");
        await page.GetByLabel("Height, pixels").FillAsync("180");
        await page.GetByLabel("Quality").SelectOptionAsync("draft");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-shot=stage]")).ToHaveTextAsync("Done", new LocatorAssertionsToHaveTextOptions { Timeout = 300_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new PageGetByRoleOptions { Name = "Harbour lights: link, finished." })).ToBeVisibleAsync();
        await AccessTests.JudgeAsync(page, "a picture");

        // What is on the page is a picture: many tones.
        var tones = await page.EvaluateAsync<int>("""
            () => { const c = document.createElement('canvas'); [c.width, c.height] = [64, 48]; const g = c.getContext('2d'); g.drawImage(document.querySelector('dialog[open] img'), 0, 0, 64, 48);
              return new Set(new Uint32Array(g.getImageData(0, 0, 64, 48).data.buffer)).size; }
            """);
        Assert.True(tones > 200, FormattableString.Invariant($"{tones} tones"));
        Assert.Equal("harbour-lights-link.png", await SaveAsync(page, "Save PNG"));

        // One that would take hours: it is seen to grow, then stopped. Until the server has its order, the page still shows the one before.
        await page.GetByLabel("Width, pixels").FillAsync("800");
        await page.GetByLabel("Height, pixels").FillAsync("600");
        await page.GetByLabel("Quality").SelectOptionAsync("final");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take", Exact = true }).ClickAsync();
        await page.WaitForFunctionAsync("window.studio.shots.shot?.width === 800 && window.studio.shots.shot.view >= 2 && window.studio.shots.look");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Stop", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-shot=stage]")).ToHaveTextAsync("Stopped");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take", Exact = true })).ToBeFocusedAsync();
        Assert.Equal("harbour-lights-link-unfinished-16-bit.png", await SaveAsync(page, "16-bit PNG"));

        // Pixel for pixel by keyboard: larger than its frame, so it can be moved.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Pixel for pixel" }).PressAsync("Enter");
        await page.WaitForFunctionAsync("document.querySelector('dialog[open] img').getBoundingClientRect().width === 800");

        // Another piece on the bench: the picture says so.
        await page.Keyboard.PressAsync("Escape");
        var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
        await field.FillAsync("2.8");
        await field.PressAsync("Enter");
        await OpenAsync(page);
        await Assertions.Expect(page.Locator(".changed")).ToHaveTextAsync("The piece has been changed since.");
    }

    [Fact]
    public async Task A_brief_for_which_no_line_closes_is_refused_in_words()
    {
        var page = await browser.OpenAsync();
        await page.EvaluateAsync("""window.studio.brief.setAll({ 'stone.diameter_mm': 8, 'length.laid_flat_mm': 100, 'clasp.length_max_mm': 3 })""");
        await OpenAsync(page);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Take", Exact = true }).PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Dialog).GetByRole(AriaRole.Alert)).ToContainTextAsync("No line closes");
    }

    private static Task OpenAsync(IPage page) => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Photograph…" }).ClickAsync();

    private static async Task<string> SaveAsync(IPage page, string button)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = button, Exact = true }).ClickAsync());
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], (await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken))[..4]);
        return download.SuggestedFilename;
    }
}
