using System.Text;
using System.Text.Json;
using Linewright.Cli;
using Linewright.Tests.Core;

namespace Linewright.Tests.Cli;

public sealed class QuoteVerbTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linewright-tests-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_quote_shows_its_total_and_every_line()
    {
        var (code, output, error) = Run(["quote", Brief(), "--prices", SamplePrices.File, "--set", "metal=gold-750-yellow"]);
        Assert.Equal((ExitCode.Done, ""), (code, error));
        Assert.Contains("48 links x 1 min = 48 min", output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Matches("\ntotal [0-9]+\\.[0-9]{2} EUR\n", output);
        Assert.Contains("not a binding offer", output, StringComparison.Ordinal);
        Assert.All(output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public void Missing_prices_end_with_2_and_are_all_named()
    {
        var prices = Write("bare.json", """{"name":"bare","date":"2026-03-02","currency":"EUR"}""");
        var place = Path.Combine(folder, "out");
        var (code, output, error) = Run(["quote", Brief(), "--prices", prices, "--out", place]);
        Assert.Equal(ExitCode.Asked, code);
        Assert.Contains("no total", output, StringComparison.Ordinal);
        Assert.Contains($"{prices}: setting: nothing there, expected a row for claw with a band that holds 3 mm", error, StringComparison.Ordinal);
        Assert.Contains($"{prices}: overhead_percent: nothing there", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(place));
        Assert.Equal(ExitCode.Asked, Run(["make", Brief(), "--prices", prices, "--out", place]).Code);
        Assert.False(Directory.Exists(place));
    }

    [Fact]
    public void Json_is_the_quote_and_nothing_else()
    {
        using var quote = JsonDocument.Parse(Run(["quote", Brief(), "--prices", SamplePrices.File, "--json"]).Out);
        Assert.Equal("EUR", quote.RootElement.GetProperty("prices").GetProperty("currency").GetString());
        Assert.Equal(JsonValueKind.Number, quote.RootElement.GetProperty("total").ValueKind);
        Assert.Equal("2026-03-02", quote.RootElement.GetProperty("prices").GetProperty("date").GetString());
    }

    [Fact]
    public void Files_of_a_quote_appear_whole_and_make_adds_them_to_its_own()
    {
        var place = Path.Combine(folder, "out");
        Assert.Equal(ExitCode.Done, Run(["quote", Brief(), "--prices", SamplePrices.File, "--out", place]).Code);
        Assert.Equal(["quote-client.pdf", "quote.csv", "quote.json", "quote.xlsx", "report.json", "stones.csv"], FilesOf(place));
        Assert.Equal(ExitCode.Done, Run(["make", Brief(), "--prices", SamplePrices.File, "--out", place]).Code);
        Assert.Equal(["link.stl", "quote-client.pdf", "quote.csv", "quote.json", "quote.xlsx", "report.json"], FilesOf(place));
    }

    [Fact]
    public void Make_prices_the_plan_that_it_follows_and_makes_no_second_one()
    {
        var bench = new SampleWorkbench();
        var place = Path.Combine(folder, "out");
        Assert.Equal(ExitCode.Done, Run(["make", Brief(), "--prices", SamplePrices.File, "--out", place], bench).Code);
        Assert.Equal(0, bench.Quoted);
        Assert.True(File.Exists(Path.Combine(place, "quote.json")));
    }

    [Theory]
    [InlineData("make")]
    [InlineData("sheet")]
    public void A_name_that_paper_cannot_show_is_said_and_the_files_are_made(string verb)
    {
        var place = Path.Combine(folder, "out");
        var (code, _, error) = Run([verb, Brief(), "--set", "name=\u6e2f\u53e3", "--out", place]);
        Assert.Equal(ExitCode.Done, code);
        Assert.True(Directory.Exists(place));
        Assert.StartsWith("Paper cannot show letters of the piece's name (U+6E2F, U+53E3): they stand as [?] in PDF and SVG", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Paper cannot show", Run([verb, Brief(), "--out", place]).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_of_a_price_list_that_paper_cannot_show_are_said_where_a_page_is_written()
    {
        var prices = Write("prices.json", File.ReadAllText(SamplePrices.File).Replace("All prices are invented", "\u6e2f", StringComparison.Ordinal));
        var place = Path.Combine(folder, "out");
        const string said = "Paper cannot show a letter of the price list's note (U+6E2F)";
        Assert.StartsWith(said, Run(["quote", Brief(), "--prices", prices, "--out", place]).Error, StringComparison.Ordinal);
        Assert.StartsWith(said, Run(["make", Brief(), "--prices", prices, "--out", place]).Error, StringComparison.Ordinal);
        using var quote = JsonDocument.Parse(File.ReadAllText(Path.Combine(place, "quote.json")));
        Assert.Contains(quote.RootElement.GetProperty("shop_notes").EnumerateArray(), note => note.GetString()!.StartsWith(said, StringComparison.Ordinal));

        // Without a page there is nothing to warn of: the tables show every letter.
        Assert.Equal("", Run(["quote", Brief(), "--prices", prices]).Error);
    }

    [Fact]
    public void A_grid_asks_for_every_combination_and_says_why_a_cell_cannot_be_made()
    {
        var bench = new SampleWorkbench();
        var place = Path.Combine(folder, "out");
        var (code, output, _) = Run(["quote", Brief(), "--prices", SamplePrices.File, "--grid", "metal=silver-925,gold-750-yellow", "stone.diameter_mm=2.5,3,3.5", "--out", place], bench);
        Assert.Equal(ExitCode.Done, code);
        Assert.Equal(("gold-750-yellow", 3.5), (bench.GridAsked[^1].Metal, bench.GridAsked[^1].Stone.DiameterMm));
        Assert.Contains("(1) no line closes: the test says so", output, StringComparison.Ordinal);
        Assert.Contains("6 cells, 5 can be made", output, StringComparison.Ordinal);
        Assert.Equal(["grid.csv", "grid.json", "grid.xlsx", "report.json"], FilesOf(place));
        Assert.Equal(7, File.ReadAllLines(Path.Combine(place, "grid.csv")).Length);
    }

    [Theory]
    [InlineData("stone.diameter_mm", "--grid stone.diameter_mm: expected a field, =, and values parted by commas")]
    [InlineData("stone.diameter_mm=3,9", "--grid stone.diameter_mm: read 9, expected a number from 1.2 to 8 mm")]
    [InlineData("stone.diameter_mm=2,,3", "--grid stone.diameter_mm=2,,3: expected a field")]
    [InlineData("stone.diameter_mm=2,30", "stone.diameter_mm: read 30, expected a number from 1.2 to 8 mm")]
    [InlineData("stone.diametre=2", "did you mean \"stone.diameter_mm\"?")]
    public void A_grid_that_cannot_be_read_ends_with_2(string axis, string said)
    {
        var (code, _, error) = Run(["quote", Brief(), "--prices", SamplePrices.File, "--grid", axis]);
        Assert.Equal(ExitCode.Asked, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_price_list_that_is_not_there_or_faulty_ends_with_2()
    {
        var missing = Path.Combine(folder, "none.json");
        Assert.Equal((ExitCode.Asked, "", $"{missing}: no such file, expected a price list; check the path\n"), Run(["quote", Brief(), "--prices", missing]));
        var faulty = Write("faulty.json", "{ \"name\": 3 }");
        Assert.Contains($"{faulty}:1:11: name: read 3, expected text", Run(["quote", Brief(), "--prices", faulty]).Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Asked, Run(["quote", Brief()]).Code);
    }

    private string Brief() => Write("brief.json", SampleReport.Brief);

    private string Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private static string[] FilesOf(string place)
        => [.. Directory.EnumerateFiles(place, "*", SearchOption.AllDirectories).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    private static (int Code, string Out, string Error) Run(string[] args, IWorkbench? bench = null)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(
            args, new Desk { In = new MemoryStream(), Out = output, Error = error, Workbench = bench ?? new SampleWorkbench() }, TestContext.Current.CancellationToken);
        return (code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}
