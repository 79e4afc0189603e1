using System.IO.Compression;
using System.Text;
using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>What the page says belongs to what lies on the bench: after a change, a refusal, another list, a page loaded again.</summary>
public class StalePageTests(PaperFixture studio) : IClassFixture<PaperFixture>
{
    [Fact]
    public async Task An_entry_that_is_no_number_changes_nothing_and_does_not_look_as_if_it_had()
    {
        var page = await studio.OpenAsync();
        var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
        foreach (var (entry, said) in new[] { ("three", "Read three, expected a number."), ("", "Read nothing, expected a number.") })
        {
            await field.FillAsync(entry);
            await field.PressAsync("Enter");
            await Assertions.Expect(page.Locator("#field-stone-diameter_mm-fault")).ToHaveTextAsync(said);
            await Assertions.Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
            Assert.Equal(3, await page.EvaluateAsync<double>("window.studio.brief.values['stone.diameter_mm']"));
        }

        await field.FillAsync("2,8");
        await field.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#field-stone-diameter_mm-fault")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".sentence")).ToContainTextAsync("2.80 mm");

        // A piece has a name: an emptied field has its old one back.
        var name = page.GetByLabel("Name of the piece");
        await name.FillAsync("  ");
        await name.PressAsync("Enter");
        await Assertions.Expect(name).ToHaveValueAsync("Harbour lights");
    }

    [Fact]
    public async Task A_brief_that_is_refused_is_not_mixed_with_the_piece_before_it()
    {
        var page = await studio.OpenAsync();
        await BrowserFixture.CheckedAsync(page);
        await page.EvaluateAsync("""() => { window.studio.brief.setAll({ 'stone.diameter_mm': 8, 'length.laid_flat_mm': 100, 'clasp.length_max_mm': 3 }); window.studio.live.changed(); }""");
        var notice = page.Locator(".notices");
        await Assertions.Expect(notice).ToContainTextAsync("No line closes");
        await Assertions.Expect(page.Locator(".sentence")).ToContainTextAsync("As it was: 48 round diamonds of 3.00 mm");
        await Assertions.Expect(page.Locator(".findings .stage")).ToHaveTextAsync("These belong to the brief as it was.");
        await AccessTests.JudgeAsync(page, "refused");

        // In the words of the controls, with the way there; and on a paper too.
        await Assertions.Expect(notice).Not.ToContainTextAsync("clasp.length_max_mm");
        await page.Locator("[data-paper=sheet]").ClickAsync();
        await Assertions.Expect(page.Locator(".workshop .notices")).ToContainTextAsync("No line closes");
        await page.Locator(".workshop .notices").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Longest length" }).First.ClickAsync();
        await Assertions.Expect(page.Locator("#field-clasp-length_max_mm")).ToBeFocusedAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(page.Locator(".notices")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_finding_that_is_measured_anew_is_marked_anew()
    {
        var page = await studio.OpenAsync();
        await BrowserFixture.CheckedAsync(page);
        await page.GetByText("checks pass").ClickAsync();
        await page.Locator("[data-rule=claw-diameter]").First.ClickAsync();
        var label = page.Locator(".labels .label").First;
        var before = await label.TextContentAsync();
        Assert.StartsWith("claw diameter 0.", before, StringComparison.Ordinal);
        await page.EvaluateAsync("() => { window.studio.brief.set('setting.claw_mm', 1.1); window.studio.live.changed(); }");
        await Assertions.Expect(label).ToContainTextAsync("claw diameter 1.1");
        await Assertions.Expect(page.Locator("[data-rule=claw-diameter][aria-pressed=true]")).ToHaveCountAsync(1);

        // In the unit that is read, at once.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "In inches" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Dimensions" }).ClickAsync();
        var inside = page.GetByText("inside circumference");
        await Assertions.Expect(inside).ToContainTextAsync(" in");
        await page.WaitForFunctionAsync("window.studio.stage.isSettled");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "In mm" }).ClickAsync();
        await Assertions.Expect(inside).ToContainTextAsync(" mm");
    }

    [Fact]
    public async Task Points_that_were_measured_go_with_the_surfaces_that_they_lay_on()
    {
        var page = await studio.OpenAsync();
        await BrowserFixture.CheckedAsync(page);
        await page.EvaluateAsync("""
            () => { const { viewer } = window.studio; viewer.setMeasuring(true);
              const box = document.querySelector('canvas').getBoundingClientRect();
              for (let x = 0; x < box.width && viewer.picked.length < 2; x += 9) for (let y = 0; y < box.height && viewer.picked.length < 2; y += 9) viewer.pickAt(x, y); }
            """);
        Assert.Equal(2, await page.EvaluateAsync<int>("window.studio.viewer.picked.length"));

        // What a section has taken away cannot be measured.
        var front = await page.EvaluateAsync<double[]>("""
            () => { const { viewer, stage } = window.studio; viewer.cut({ axis: 'y', share: 0.5 });
              const box = document.querySelector('canvas').getBoundingClientRect(), found = [];
              for (let x = 0; x < box.width; x += 9) for (let y = 0; y < box.height; y += 9) { const hit = stage.pick(x, y); if (hit) found.push(hit.point.y); }
              const middle = stage.line.shared.cut.value.w / stage.line.shared.cut.value.y; viewer.cut(null); return [found.length, Math.min(...found) - middle]; }
            """);
        Assert.True(front[0] > 10 && front[1] > -1e-6, FormattableString.Invariant($"{front[0]} places, the nearest {front[1]} mm behind the cut"));
        var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
        await field.FillAsync("3.4");
        await field.PressAsync("Enter");
        await page.WaitForFunctionAsync("window.studio.viewer.picked.length === 0");
    }

    [Fact]
    public async Task A_quote_and_its_grid_belong_to_the_list_on_the_table()
    {
        var page = await studio.OpenAsync();
        await page.Locator("[data-paper=quote]").ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Try with invented prices" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-figure=total]")).ToContainTextAsync("EUR");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Alternatives" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "In inches" }).ClickAsync();
        await page.GetByText("Metals:").ClickAsync();
        await page.GetByLabel("Platinum 950 with ruthenium").UncheckAsync();
        await page.GetByLabel("18 ct yellow gold 750 (3N)").UncheckAsync();
        await page.GetByLabel("Stones, mm").FillAsync("3; 3,0");
        await page.GetByLabel("Lengths laid flat, in").FillAsync("7, seven");
        await Assertions.Expect(page.GetByText("Expected numbers with commas")).ToBeVisibleAsync();
        await page.GetByLabel("Lengths laid flat, in").FillAsync("7, 7.25");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Quote 2 pieces" }).ClickAsync();
        await Assertions.Expect(page.Locator(".grid td button")).ToHaveCountAsync(2);
        await Assertions.Expect(page.Locator(".grid thead")).ToContainTextAsync("7.25 in");

        // Read in mm, what was written in inches is the same length.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "In mm" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Lengths laid flat, mm")).ToHaveValueAsync("177.8, 184.15"); // Source: the international inch, 25.4 mm
        await page.Locator(".grid td button").First.ClickAsync();
        await page.WaitForFunctionAsync("window.studio.brief.values['length.laid_flat_in'] === 7 && window.studio.brief.values['length.laid_flat_mm'] === undefined");
        await Assertions.Expect(page.GetByText("Reckoned for the brief or the prices as they were.")).ToBeVisibleAsync();

        // Another list: no amount of the first is shown as if it were of this one.
        var another = page.GetByLabel("Another list");
        await another.SetInputFilesAsync(new FilePayload { Name = "bad.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes("""{ "name": "x", "currency": "EURO" }""") });
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("The price list has faults");
        await Assertions.Expect(page.Locator("[data-figure=total]")).ToHaveCountAsync(0);
        Assert.Equal("", await another.InputValueAsync()); // or the browser would not hear of the same file, mended
    }

    [Fact]
    public async Task The_archive_holds_the_quote_where_a_list_lies_on_the_table()
    {
        var page = await studio.OpenAsync();
        await page.Locator("[data-paper=quote]").ClickAsync();
        await page.GetByLabel("open a price list").SetInputFilesAsync(new FilePayload { Name = "bare.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(QuoteDoorTests.Bare) });
        await BrowserFixture.CheckedAsync(page);

        // A list that lacks a price holds up the quote, not the patterns.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Export" }).ClickAsync();
        var dialog = page.GetByRole(AriaRole.Dialog);
        await Assertions.Expect(dialog.GetByRole(AriaRole.Alert)).ToContainTextAsync("overhead_percent");
        await AccessTests.JudgeAsync(page, "export without a price");
        var bare = await NamesAsync(page, dialog.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Export without the quote" }));
        Assert.DoesNotContain("quote.json", bare);
        await dialog.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Close" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Put it away" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Try with invented prices" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-figure=total]")).ToContainTextAsync("EUR");
        var whole = await NamesAsync(page, page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Export" }));
        Assert.Equal(["quote-client.pdf", "quote.csv", "quote.json", "quote.xlsx"], whole.Except(bare, StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Keys_belong_to_the_dialog_that_lies_before_the_bench()
    {
        var page = await studio.OpenAsync();
        var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
        await field.FillAsync("2.9");
        await field.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Photograph…" }).ClickAsync();
        await page.GetByText("More", new PageGetByTextOptions { Exact = true }).ClickAsync();
        await page.GetByLabel("Seed").FillAsync("23");
        await page.Keyboard.PressAsync("Control+z");
        await page.Keyboard.PressAsync("Control+s");
        Assert.Equal(2.9, await page.EvaluateAsync<double>("window.studio.brief.values['stone.diameter_mm']"));
        await Assertions.Expect(page.Locator("dialog[open]")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("header .file")).ToContainTextAsync("not saved");
    }

    [Fact]
    public async Task Work_without_a_file_is_there_again_with_the_page_and_is_never_thrown_away_unseen()
    {
        var page = await studio.OpenAsync();
        page.Dialog += (_, dialog) => _ = dialog.AcceptAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "New", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("header .file")).ToContainTextAsync("no file yet");
        var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
        await field.FillAsync("3.3");
        await field.PressAsync("Enter");
        await KeptAsync(".untitled.json.working", "3.3");

        // The studio was started with a file; this page had left it.
        await page.ReloadAsync();
        await Assertions.Expect(field).ToHaveValueAsync("3.3");
        await Assertions.Expect(page.Locator("header .file")).ToContainTextAsync("no file yet");

        // Behind another file it stays, and New brings it back instead of throwing it away.
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Open…" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "short-tide" }).ClickAsync();
        await Assertions.Expect(field).ToHaveValueAsync("2.6");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "New", Exact = true }).ClickAsync();
        await Assertions.Expect(field).ToHaveValueAsync("3.3");
        await Assertions.Expect(page.Locator(".notices")).ToContainTextAsync("Your work without a file is back.");
    }

    [Fact]
    public async Task A_browser_without_a_picture_has_all_the_rest()
    {
        var page = await studio.OpenAsync();
        await page.AddInitScriptAsync("HTMLCanvasElement.prototype.getContext = () => null;");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".notices")).ToContainTextAsync("cannot draw the piece");
        await page.WaitForFunctionAsync("window.studio?.live.isCurrent");
        await Assertions.Expect(page.Locator("[data-figure=count]")).ToHaveTextAsync("48");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(1);
    }

    private async Task KeptAsync(string file, string said)
    {
        var path = Path.Combine(studio.Browser.Studio.Folder, file);
        Assert.True(await DoorTests.Becomes(() => File.Exists(path) && File.ReadAllText(path).Contains(said, StringComparison.Ordinal)), $"no {said} in {file}");
    }

    private static async Task<List<string>> NamesAsync(IPage page, ILocator button)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => button.ClickAsync());
        using var zip = new ZipArchive(new MemoryStream(await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken)));
        return [.. zip.Entries.Select(entry => entry.FullName)];
    }
}
