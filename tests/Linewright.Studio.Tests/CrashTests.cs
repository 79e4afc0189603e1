using System.Diagnostics;
using Microsoft.Playwright;

namespace Linewright.Studio.Tests;

/// <summary>What is left when the studio is killed in the middle of the work.</summary>
public class CrashTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    [Fact]
    public async Task A_killed_server_loses_at_most_the_last_second()
    {
        Assert.SkipWhen(BrowserFixture.Missing.Length > 0, BrowserFixture.Missing);
        var folder = Directory.CreateTempSubdirectory("linewright-crash-").FullName;
        await File.WriteAllTextAsync(Path.Combine(folder, "tide.json"), StudioFixture.Sound, TestContext.Current.CancellationToken);
        var (first, address) = await StartAsync(folder, 0);
        IPage page;
        try
        {
            page = await browser.OpenAsync(address);
            await Assertions.Expect(page.GetByLabel("Name of the piece")).ToHaveValueAsync("Short tide");
            var field = page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true });
            await field.FillAsync("2.9");
            await field.PressAsync("Enter");
            await Assertions.Expect(page.Locator("header .file")).ToContainTextAsync("not saved");
            await Task.Delay(1000, TestContext.Current.CancellationToken);
        }
        finally
        {
            first.Kill(); // SIGKILL
            await first.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        var (second, again) = await StartAsync(folder, new Uri(address).Port);
        try
        {
            Assert.Equal(address, again);
            page.Dialog += (_, dialog) => _ = dialog.AcceptAsync();
            await page.ReloadAsync();
            await Assertions.Expect(page.GetByLabel("Diameter", new PageGetByLabelOptions { Exact = true })).ToHaveValueAsync("2.9");
            await Assertions.Expect(page.Locator(".notices")).ToContainTextAsync("had not been saved is back");
            Assert.Equal(StudioFixture.Sound, await File.ReadAllTextAsync(Path.Combine(folder, "tide.json"), TestContext.Current.CancellationToken));
        }
        finally
        {
            second.Kill();
            await second.WaitForExitAsync(CancellationToken.None);
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<(Process Process, string Address)> StartAsync(string folder, int port)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "linewright-studio.dll");
        var process = Process.Start(new ProcessStartInfo("dotnet", [program, Path.Combine(folder, "tide.json"), "--no-open", "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture)]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var line = await process.StandardOutput.ReadLineAsync();
        return (process, line!["Linewright studio: ".Length..]);
    }
}
