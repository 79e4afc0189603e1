using System.Net;
using System.Text;
using System.Text.Json;

namespace Linewright.Studio.Tests;

/// <summary>What the interface refuses, and how it says so.</summary>
public class RefusalTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    [Fact]
    public async Task A_fault_in_a_brief_names_field_line_and_column()
    {
        const string brief = """
            { "name": "x",
              "stone": { "diameter_mm": 9 },
              "metal": "gold-750-yellow", "length": { "laid_flat_mm": 178 } }
            """;
        using var answer = await studio.PostAsync("api/plan", brief, TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.BadRequest);
        var fault = problem.RootElement.GetProperty("faults")[0];
        Assert.Equal("stone.diameter_mm", fault.GetProperty("path").GetString());
        Assert.Equal((2, 29), (fault.GetProperty("line").GetInt32(), fault.GetProperty("column").GetInt32()));
        Assert.Contains("1.2 to 8", fault.GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_that_does_not_close_says_why()
    {
        const string brief = """
            { "name": "x", "stone": { "diameter_mm": 8 }, "metal": "gold-750-yellow", "length": { "laid_flat_mm": 100 }, "clasp": { "length_max_mm": 3 } }
            """;
        using var answer = await studio.PostAsync("api/piece", brief, TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.UnprocessableEntity);
        Assert.Contains("clasp", problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("api/plan")]
    [InlineData("api/piece")]
    [InlineData("api/weigh")]
    [InlineData("api/checks")]
    [InlineData("api/flex")]
    [InlineData("api/mesh")]
    [InlineData("api/export")]
    [InlineData("api/picture")]
    public async Task Every_door_refuses_what_is_no_brief(string door)
    {
        using var answer = await studio.PostAsync(door, "{", TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.Equal(1, problem.RootElement.GetProperty("faults")[0].GetProperty("line").GetInt32());
    }

    [Fact]
    public async Task A_body_that_is_not_json_is_not_looked_at()
    {
        using var answer = await studio.Client.PostAsync("api/plan", new StringContent(StudioFixture.Sound, Encoding.UTF8, "text/plain"), TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.UnsupportedMediaType);
    }

    [Fact]
    public async Task An_oversized_body_is_refused()
    {
        // The answer comes before the body is sent: a server that hangs up amid it would be a broken pipe to some clients.
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/plan")
        {
            Content = new StringContent($$"""{ "name": "{{new string('x', 3 << 20)}}" }""", System.Text.Encoding.UTF8, "application/json"),
            Headers = { ExpectContinue = true },
        };
        using var answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.RequestEntityTooLarge);
    }

    [Theory]
    [InlineData("api/mesh?quality=best", "quality")]
    [InlineData("api/mesh?state=raw", "state")]
    [InlineData("api/mesh?parts=wheel", "parts")]
    public async Task An_unknown_choice_names_its_parameter(string door, string parameter)
    {
        using var answer = await studio.PostAsync(door, StudioFixture.Sound, TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.StartsWith(parameter, problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_door_that_is_not_there_is_a_problem_too()
    {
        using var answer = await studio.Client.GetAsync("api/nothing", TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData("Origin", "http://elsewhere.example", HttpStatusCode.Forbidden)]
    [InlineData("Origin", "null", HttpStatusCode.Forbidden)]
    [InlineData("Sec-Fetch-Site", "cross-site", HttpStatusCode.Forbidden)]
    [InlineData("Host", "elsewhere.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("Host", "127.0.0.1:1", HttpStatusCode.MisdirectedRequest)]
    public async Task Nobody_from_elsewhere_is_let_in(string header, string value, HttpStatusCode status)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "api/files");
        request.Headers.TryAddWithoutValidation(header, value);
        using var answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
        using var problem = await ProblemOf(answer, status);
    }

    [Fact]
    public async Task Its_own_pages_are_let_in()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "api/files");
        request.Headers.Add("Origin", studio.Address.TrimEnd('/'));
        request.Headers.Add("Sec-Fetch-Site", "same-origin");
        using var answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    internal static async Task<JsonDocument> ProblemOf(HttpResponseMessage answer, HttpStatusCode status)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal((int)status, problem.RootElement.GetProperty("status").GetInt32());
        Assert.NotEmpty(problem.RootElement.GetProperty("detail").GetString()!);
        return problem;
    }
}
