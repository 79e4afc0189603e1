using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>A designer's afternoon in the browser: open, change, undo, flex, mend, take the files home.</summary>
public class PageTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    [Fact]
    public async Task The_first_start_shows_the_demo_piece()
    {
        var page = await browser.OpenAsync();
        await Assertions.Expect(page.GetByLabel("Name of the piece")).ToHaveValueAsync("Harbour lights");
        await Assertions.Expect(page.Locator("[data-figure=count]")).ToHaveTextAsync("48");
        await Assertions.Expect(page.Locator(".sentence")).ToContainTextAsync("round diamonds of 3.00 mm");

        // Something was drawn: the middle of the picture is not of one colour.
        await page.WaitForFunctionAsync("window.studio.stage.isSettled");
        var tones = await page.EvaluateAsync<int>("""
            () => { const { stage } = window.studio; stage.eye.nudge(0, 0, 1.0001);
              return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => {
                const c = document.createElement('canvas'); c.width = c.height = 64; const g = c.getContext('2d'); const from = document.querySelector('canvas');
                stage.developer.first(stage.scene, stage.eye.camera); g.drawImage(from, 0, 0, 64, 64);
                done(new Set(Array.from(new Uint32Array(g.getImageData(0, 0, 64, 64).data.buffer))).size); }))); }
            """);
        Assert.True(tones > 200, FormattableString.Invariant($"{tones} tones"));
    }

    [Fact]
    public async Task A_larger_stone_by_keyboard_changes_count_pitch_and_surfaces()
    {
        var page = await browser.OpenAsync();
        var before = await page.Locator("[data-figure=pitch]").TextContentAsync();
        var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
        await field.FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowUp");
        await Assertions.Expect(field).ToHaveValueAsync("4");
        await Assertions.Expect(page.Locator("[data-figure=pitch]")).Not.ToHaveTextAsync(before!);
        await Assertions.Expect(page.Locator(".sentence")).ToContainTextAsync("4.00 mm");
        await page.WaitForFunctionAsync("Math.abs(window.studio.stage.line.packet.stone.diameterMm - 4) < 1e-6");
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(field).ToHaveValueAsync("4"); // in a text undo belongs to the text
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(field).ToHaveValueAsync("3");
        await Assertions.Expect(page.Locator("[data-figure=pitch]")).ToHaveTextAsync(before!);
    }

    [Fact]
    public async Task Another_layout_can_be_taken_undone_and_done_again()
    {
        var page = await browser.OpenAsync();
        await page.GetByRole(AriaRole.Tab, new PageGetByRoleOptions { Name = "Line" }).ClickAsync();
        var rows = page.Locator(".candidates tbody tr");
        await Assertions.Expect(rows.First).ToContainClassAsync("taken");
        var counts = await page.Locator(".candidates tbody button").AllTextContentsAsync();
        var other = Enumerable.Range(0, counts.Count).First(i => counts[i] != "48");
        await rows.Nth(other).GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(page.Locator("[data-figure=count]")).ToHaveTextAsync(counts[other]);
        await Assertions.Expect(rows.Nth(other)).ToContainClassAsync("taken");
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(page.Locator("[data-figure=count]")).ToHaveTextAsync("48");
        await page.Keyboard.PressAsync("Control+Shift+z");
        await Assertions.Expect(page.Locator("[data-figure=count]")).ToHaveTextAsync(counts[other]);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Let it choose" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-figure=count]")).ToHaveTextAsync("48");
    }

    [Fact]
    public async Task The_joint_turns_to_its_stop_and_says_what_touches()
    {
        var page = await browser.OpenAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "A joint" }).ClickAsync();
        await page.WaitForFunctionAsync("window.studio.live.flex");
        var slider = page.GetByRole(AriaRole.Slider, new PageGetByRoleOptions { Name = "Turn the joint" });
        await slider.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        await Assertions.Expect(page.Locator("#flex-words")).ToContainTextAsync("Touches: stop of the link on stop of the next");
        await Assertions.Expect(page.Locator("[data-figure=flex]")).ToContainTextAsync("backwards");
        var turned = await page.EvaluateAsync<double>("window.studio.stage.line.placementOf('link', 1).turn.y");
        Assert.True(turned < -0.05, FormattableString.Invariant($"the second link has not turned: {turned}"));
        await page.Keyboard.PressAsync("End");
        await Assertions.Expect(page.Locator("#flex-words")).ToContainTextAsync("Touches:");
    }

    [Fact]
    public async Task A_failing_check_is_marked_on_the_metal_and_mended_by_what_it_says()
    {
        var page = await browser.OpenAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Open…" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "thin-claws" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Name of the piece")).ToHaveValueAsync("Thin claws");
        await BrowserFixture.CheckedAsync(page);
        var finding = page.Locator("[data-rule=claw-diameter][data-verdict=fail]");
        await finding.ClickAsync();
        await Assertions.Expect(page.Locator(".label.fail")).ToContainTextAsync("claw diameter");
        var mark = await page.EvaluateAsync<double>("window.studio.stage.line.metals.get('link').places.value[0].w");
        Assert.True(mark > 0.1, "no patch on the metal");

        // The cure names the field; raise it there.
        await page.Locator(".go").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Claw diameter" }).First.ClickAsync();
        var claw = page.GetByLabel("Claw diameter", new PageGetByLabelOptions { Exact = true });
        await Assertions.Expect(claw).ToBeFocusedAsync();
        await claw.FillAsync("0.82");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForFunctionAsync("!window.studio.live.isCurrent");
        await BrowserFixture.CheckedAsync(page);
        await Assertions.Expect(page.Locator("[data-rule=claw-diameter][data-verdict=fail]")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task The_archive_comes_down_and_holds_the_files()
    {
        var page = await browser.OpenAsync();
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Export" }).ClickAsync());
        Assert.Equal("harbour-lights.zip", download.SuggestedFilename);
        Zips.Judge(await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_brief_with_faults_is_not_opened_and_says_where()
    {
        var page = await browser.OpenAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Open…" }).ClickAsync();
        await page.GetByLabel("From elsewhere").SetInputFilesAsync(new FilePayload { Name = "bad.json", MimeType = "application/json", Buffer = """{ "name": "x" }"""u8.ToArray() });
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("line 1, column 1");
        await Assertions.Expect(page.GetByLabel("Name of the piece")).ToHaveValueAsync("Harbour lights");
    }

    [Fact]
    public async Task Lengths_are_shown_in_inches_to_who_asks()
    {
        var page = await browser.OpenAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "In inches" }).ClickAsync();

        // 3 mm over 25.4 mm to the inch.
        await Assertions.Expect(page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true })).ToHaveValueAsync("0.1181");
        await Assertions.Expect(page.Locator(".sentence")).ToContainTextAsync("7.01 in laid flat");
    }

    [Fact]
    public async Task No_request_leaves_the_machine()
    {
        var page = await browser.OpenAsync();
        await BrowserFixture.CheckedAsync(page);
        Assert.Empty(browser.Abroad);
    }
}
