using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Linewright.Casting;
using Linewright.Delivery;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Quote;
using Linewright.Studio.Serving;
using Microsoft.Extensions.DependencyInjection;

namespace Linewright.Studio.Tests;

/// <summary>Quotes over HTTP: the same bytes as the command's, and prices that are missing are named.</summary>
public class QuoteDoorTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    /// <summary>A list with next to nothing in it.</summary>
    internal const string Bare = """{ "name": "bare", "date": "2026-03-02", "currency": "EUR" }""";

    private static readonly Lazy<string> Prices = new(() =>
    {
        using var stream = typeof(StudioServer).Assembly.GetManifestResourceStream("demo-prices.json")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    });

    [Fact]
    public async Task A_quote_and_its_files_are_those_of_the_command()
    {
        var stop = TestContext.Current.CancellationToken;
        var brief = WorkshopDoorTests.Resolved();
        var design = LineDesign.Solve(brief);
        var quote = Quotes.Of(QuoteBasis.Of(CastingPlans.Of(PartsBuilder.Build(design), stop: stop)), List(Prices.Value));
        var files = WorkshopDoorTests.Written(create => QuoteFiles.Write(quote, brief, create));
        Assert.NotNull(quote.Total);
        foreach (var (format, file) in new[] { ("json", "quote.json"), ("xlsx", "quote.xlsx"), ("csv", "quote.csv"), ("pdf", "quote-client.pdf") })
        {
            using var answer = await studio.PostAsync($"api/quote?format={format}", Request(Prices.Value), stop);
            Assert.Equal(files[file], await answer.Content.ReadAsByteArrayAsync(stop));
        }
    }

    [Fact]
    public async Task The_clients_page_on_letter_is_the_one_that_Delivery_writes()
    {
        var stop = TestContext.Current.CancellationToken;
        var brief = WorkshopDoorTests.Resolved();
        var design = LineDesign.Solve(brief);
        var quote = Quotes.Of(QuoteBasis.Of(CastingPlans.Of(PartsBuilder.Build(design), stop: stop)), List(Prices.Value));
        byte[] On(PaperSize paper) => WorkshopDoorTests.Written(create => QuoteFiles.Write(quote, brief, paper, create))["quote-client.pdf"];
        using var answer = await studio.PostAsync("api/quote?format=pdf&paper=letter", Request(Prices.Value), stop);
        var letter = await answer.Content.ReadAsByteArrayAsync(stop);
        Assert.Equal(On(PaperSize.Letter), letter);
        Assert.NotEqual(On(PaperSize.A4), letter);
    }

    [Fact]
    public async Task Missing_prices_are_named_and_no_file_is_written()
    {
        var stop = TestContext.Current.CancellationToken;
        using var answer = await studio.PostAsync("api/quote", Request(Bare), stop);
        using var quote = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(stop));
        Assert.Equal(JsonValueKind.Null, quote.RootElement.GetProperty("total").ValueKind);
        var missing = quote.RootElement.GetProperty("missing").EnumerateArray().Select(price => price.GetProperty("path").GetString()).ToList();
        Assert.Contains("overhead_percent", missing);
        using var refused = await studio.PostAsync("api/quote?format=pdf", Request(Bare), stop);
        using var problem = await RefusalTests.ProblemOf(refused, HttpStatusCode.UnprocessableEntity);
        Assert.Equal(missing, problem.RootElement.GetProperty("missing").EnumerateArray().Select(price => price.GetProperty("path").GetString()));
    }

    [Fact]
    public async Task A_fault_in_a_price_list_has_line_and_column_of_its_file()
    {
        const string list = """
            { "name": "x", "date": "2026-03-02",
              "currency": "EURO" }
            """;
        using var answer = await studio.PostAsync("api/quote", Request(list), TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        var fault = problem.RootElement.GetProperty("faults")[0];
        Assert.Equal(("currency", 2, 15), (fault.GetProperty("path").GetString(), fault.GetProperty("line").GetInt32(), fault.GetProperty("column").GetInt32()));

        // What is no JSON at all can be sent as text, and is answered with its place too.
        using var torn = await studio.PostAsync("api/quote", Request("{ \"name\":\n "), TestContext.Current.CancellationToken);
        using var second = await RefusalTests.ProblemOf(torn, HttpStatusCode.BadRequest);
        Assert.Equal(2, second.RootElement.GetProperty("faults")[0].GetProperty("line").GetInt32());
    }

    [Fact]
    public async Task A_grid_tells_how_far_it_is_and_its_workbook_costs_nothing_more()
    {
        var stop = TestContext.Current.CancellationToken;
        IReadOnlyList<GridAxis> axes = [new("metal", ["gold-750-yellow", "silver-925"]), new("length.laid_flat_mm", ["150", "160"])];
        var shelf = studio.App.Services.GetRequiredService<GridShelf>();
        var before = shelf.Reckoned;
        var body = Request(Prices.Value, """{ "metal": ["gold-750-yellow", "silver-925"], "length.laid_flat_mm": [150, 160] }""");
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/quote") { Content = StudioFixture.Json(body) };
        request.Headers.Accept.ParseAdd(StageLines.MediaType);
        using var answer = await studio.Client.SendAsync(request, stop);
        var lines = (await answer.Content.ReadAsStringAsync(stop)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(Enumerable.Range(1, 4).Select(n => FormattableString.Invariant($"Quoted {n} of 4 cells")), lines[..^1].Select(line => JsonNode.Parse(line)!["stage"]!.GetValue<string>()).Order(StringComparer.Ordinal));

        var briefs = QuoteGrids.Combinations(axes).Select(values => WorkshopDoorTests.Resolved([.. axes.Zip(values, (axis, value) => $"{axis.Path}={value}")])).ToList();
        var grid = QuoteGrids.Run(axes, briefs, List(Prices.Value), null, false, stop: stop);
        using var text = new MemoryStream();
        QuoteJson.Write(grid, text);
        using var whole = await studio.PostAsync("api/quote", body, stop);
        Assert.Equal(Encoding.UTF8.GetString(text.ToArray()), await whole.Content.ReadAsStringAsync(stop));
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(lines[^1]), JsonNode.Parse(text.ToArray())));
        var files = WorkshopDoorTests.Written(create => QuoteFiles.Write(grid, PriceHead.Of(List(Prices.Value)), create));
        using var workbook = await studio.PostAsync("api/quote?format=xlsx", body, stop);
        Assert.Equal(files["grid.xlsx"], await workbook.Content.ReadAsByteArrayAsync(stop));
        Assert.Equal(before + 1, shelf.Reckoned);
    }

    [Theory]
    [InlineData("""[]""", "expected {")]
    [InlineData("""{ "brief": {} }""", "prices: nothing there")]
    [InlineData("""{ "brief": {}, "prices": {}, "colour": 1 }""", "colour: not a field")]
    [InlineData("""{ "brief": {}, "prices": {}, "grid": { "metal": [] } }""", "grid.metal: expected a list")]
    [InlineData("""{ "brief": {}, "prices": {}, "check": 1 }""", "check: expected true or false")]
    [InlineData("""{ "brief": """, "the body is no JSON")]
    public async Task A_request_that_is_no_quote_says_what_it_lacks(string body, string said)
    {
        using var answer = await studio.PostAsync("api/quote", body, TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.StartsWith(said, problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_grid_that_is_too_large_or_wrong_is_refused_before_it_is_begun()
    {
        var stop = TestContext.Current.CancellationToken;
        var many = string.Join(',', Enumerable.Range(0, 501).Select(n => 150 + 0.1 * n).Select(mm => mm.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        using var large = await studio.PostAsync("api/quote", Request(Prices.Value, $$"""{ "length.laid_flat_mm": [{{many}}] }"""), stop);
        using var first = await RefusalTests.ProblemOf(large, HttpStatusCode.BadRequest);
        Assert.Contains("read 501 combinations", first.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
        using var wrong = await studio.PostAsync("api/quote", Request(Prices.Value, """{ "stone.diameter_mm": [2, 30] }"""), stop);
        using var second = await RefusalTests.ProblemOf(wrong, HttpStatusCode.BadRequest);
        Assert.Equal("stone.diameter_mm", second.RootElement.GetProperty("faults")[0].GetProperty("path").GetString());
        using var page = await studio.PostAsync("api/quote?format=pdf", Request(Prices.Value, """{ "metal": ["silver-925"] }"""), stop);
        using var third = await RefusalTests.ProblemOf(page, HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Lists_that_multiply_past_any_memory_are_refused_by_their_count()
    {
        // 200 to the fifth: 320 thousand million combinations of a body of a few kilobytes.
        var values = string.Join(',', Enumerable.Range(0, 200).Select(n => (150 + n).ToString(System.Globalization.CultureInfo.InvariantCulture)));
        var axes = string.Join(',', new[] { "length.laid_flat_mm", "stone.diameter_mm", "setting.claw_mm", "link.stone_gap_mm", "hinge.bar_mm" }.Select(path => $"\"{path}\": [{values}]"));
        using var large = await studio.PostAsync("api/quote", Request(Prices.Value, $"{{ {axes} }}"), TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(large, HttpStatusCode.BadRequest);
        Assert.EndsWith("expected at most 500; ask for fewer values", problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lengths_of_a_grid_may_be_inches_and_cost_what_they_cost_in_mm()
    {
        var stop = TestContext.Current.CancellationToken;
        async Task<JsonElement> CellAsync(string axis)
        {
            using var answer = await studio.PostAsync("api/quote", Request(Prices.Value, $"{{ {axis} }}"), stop);
            using var grid = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(stop));
            return Assert.Single(grid.RootElement.GetProperty("cells").EnumerateArray()).Clone();
        }

        // Source: the international inch, 25.4 mm.
        var (inches, mm) = (await CellAsync("\"length.laid_flat_in\": [6.5]"), await CellAsync("\"length.laid_flat_mm\": [165.1]"));
        Assert.Equal(165.1, inches.GetProperty("laid_flat_mm").GetDouble(), 6);
        Assert.Equal(mm.GetProperty("total").GetDecimal(), inches.GetProperty("total").GetDecimal());
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public async Task The_archive_holds_the_quote_of_the_prices_that_come_with_the_brief(string paper)
    {
        var stop = TestContext.Current.CancellationToken;
        var brief = WorkshopDoorTests.Resolved();
        var design = LineDesign.Solve(brief);
        var quote = Quotes.Of(QuoteBasis.Of(CastingPlans.Of(PartsBuilder.Build(design), stop: stop)), List(Prices.Value));
        var files = WorkshopDoorTests.Written(create => QuoteFiles.Write(quote, brief, paper == "a4" ? PaperSize.A4 : PaperSize.Letter, create));
        using var answer = await studio.PostAsync($"api/export?paper={paper}", Request(Prices.Value), stop);
        var bytes = await answer.Content.ReadAsByteArrayAsync(stop);
        Zips.Judge(bytes);
        using var zip = new System.IO.Compression.ZipArchive(new MemoryStream(bytes));
        Assert.Equal(["quote-client.pdf", "quote.csv", "quote.json", "quote.xlsx"], files.Keys.Order(StringComparer.Ordinal));
        Assert.All(files, file => Assert.Equal(file.Value, Zips.Read(zip, file.Key)));

        // The sheet is on the same paper, lying: 11 by 8.5 inches in points.
        Assert.Equal(paper == "letter", Encoding.Latin1.GetString(Zips.Read(zip, "sheet.pdf")).Contains("/MediaBox [0 0 792 612]", StringComparison.Ordinal));

        // Without prices there is no quote, and the same files otherwise.
        using var plain = await studio.PostAsync($"api/export?paper={paper}", WorkshopDoorTests.Coarse, stop);
        using var without = new System.IO.Compression.ZipArchive(await plain.Content.ReadAsStreamAsync(stop));
        Assert.Equal(zip.Entries.Select(entry => entry.FullName).Except(files.Keys, StringComparer.Ordinal), without.Entries.Select(entry => entry.FullName));
    }

    [Fact]
    public async Task An_archive_without_a_price_is_refused_at_once_and_says_so_in_its_last_line()
    {
        // A brief of its own: it must be weighed, so a stage is told before the refusal.
        var stop = TestContext.Current.CancellationToken;
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/export") { Content = StudioFixture.Json(Request(Bare).Replace("2.6", "2.65", StringComparison.Ordinal)) };
        request.Headers.Accept.ParseAdd(StageLines.MediaType);
        using var answer = await studio.Client.SendAsync(request, stop);
        var lines = (await answer.Content.ReadAsStringAsync(stop)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("Weighing", JsonNode.Parse(Assert.Single(lines[..^1]))!["stage"]!.GetValue<string>());
        var problem = JsonNode.Parse(lines[^1])!["problem"]!;
        Assert.Equal(("Prices are missing", 422), (problem["title"]!.GetValue<string>(), problem["status"]!.GetValue<int>()));
        Assert.Contains("overhead_percent", problem["missing"]!.AsArray().Select(price => price!["path"]!.GetValue<string>()));

        using var grid = await studio.PostAsync("api/export", Request(Prices.Value, """{ "metal": ["silver-925"] }"""), stop);
        using var refused = await RefusalTests.ProblemOf(grid, HttpStatusCode.BadRequest);
        Assert.StartsWith("grid:", refused.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_grid_ends_when_its_client_leaves()
    {
        var queue = studio.App.Services.GetRequiredService<WorkQueue>();
        using var leaving = new CancellationTokenSource();
        var asked = studio.PostAsync("api/quote", Request(Prices.Value, """{ "stone.diameter_mm": [2, 2.1, 2.2, 2.3, 2.4, 2.7, 2.8, 2.9, 3, 3.1, 3.2, 3.3, 3.4, 3.6, 3.7] }"""), leaving.Token);
        Assert.True(await DoorTests.Becomes(() => queue.Running == 1));
        await leaving.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => asked);
        Assert.True(await DoorTests.Becomes(() => queue.Running == 0));
    }

    private static PriceList List(string text) => PriceListReader.Read(Encoding.UTF8.GetBytes(text), "prices").List!;

    // As the page sends it: both as the text of their files.
    private static string Request(string prices, string grid = "null")
        => $$"""{ "brief": {{JsonSerializer.Serialize(WorkshopDoorTests.Coarse)}}, "prices": {{JsonSerializer.Serialize(prices)}}, "grid": {{grid}} }""";
}
