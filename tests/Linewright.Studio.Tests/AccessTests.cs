using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>Everybody can use it: each state of the page before the axe rules, and at twice the size.</summary>
public class AccessTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task No_state_of_the_page_breaks_a_rule(bool isDark)
    {
        var page = await browser.OpenAsync(isDark: isDark);
        await BrowserFixture.CheckedAsync(page);
        foreach (var tab in (string[])["Stone", "Setting", "Line", "Metal", "Clasp", "Process"])
        {
            await page.GetByRole(AriaRole.Tab, new PageGetByRoleOptions { Name = tab }).ClickAsync();
            await JudgeAsync(page, tab);
        }

        await page.Locator("[data-verdict=caution]").First.ClickAsync();
        await page.Locator(".findings summary").First.ClickAsync();
        await JudgeAsync(page, "a finding");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "The clasp" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Section" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Dimensions" }).ClickAsync();
        await JudgeAsync(page, "section and dimensions");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Open…" }).ClickAsync();
        await JudgeAsync(page, "open");
        await page.Keyboard.PressAsync("Escape");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Save as…" }).ClickAsync();
        await JudgeAsync(page, "save as");
        await page.Keyboard.PressAsync("Escape");
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Photograph…" }).ClickAsync();
        await page.GetByText("More", new PageGetByTextOptions { Exact = true }).ClickAsync();
        await JudgeAsync(page, "photograph");
    }

    [Fact]
    public async Task At_twice_the_size_nothing_is_cut_off()
    {
        // 1280 pixels at 200 % are 640.
        var page = await browser.OpenAsync(width: 640);
        Assert.Equal(640, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await JudgeAsync(page, "640 wide");
    }

    [Fact]
    public async Task The_whole_page_is_reached_by_the_tab_key()
    {
        var page = await browser.OpenAsync();
        await BrowserFixture.CheckedAsync(page);
        var reached = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < 200 && !reached.Contains("reading"); i++)
        {
            await page.Keyboard.PressAsync("Tab");
            reached.Add(await page.EvaluateAsync<string>("document.activeElement.closest('header, .docket, main, .reading')?.className.split(' ')[0] || document.activeElement.closest('header, main')?.tagName || 'none'"));
        }

        Assert.Superset(new HashSet<string>(["docket", "reading"], StringComparer.Ordinal), reached);
        Assert.Contains(reached, name => name is "HEADER" || name.StartsWith("svelte", StringComparison.Ordinal));
    }

    internal static async Task JudgeAsync(IPage page, string state)
    {
        var result = await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        var slips = result.Violations.Select(slip => $"{state}: {slip.Id}: {string.Join("; ", slip.Nodes.Take(3).Select(node => node.Html[..Math.Min(160, node.Html.Length)]))}");
        Assert.True(!slips.Any(), string.Join('\n', slips));
    }
}
