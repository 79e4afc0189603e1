using System.Net;
using System.Text.Json;

namespace Linewright.Studio.Tests;

/// <summary>Briefs on the disk: only in the folder, whole or not at all, and never over somebody else's work.</summary>
public class FolderTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    [Theory]
    [InlineData("..%2Fsecret.json")]
    [InlineData("..%5Csecret.json")]
    [InlineData("%2Fetc%2Fpasswd.json")]
    [InlineData(".hidden.json")]
    [InlineData("C%3Asecret.json")]
    [InlineData("con.json")]
    [InlineData("brief.txt")]
    public async Task No_name_leads_out_of_the_folder(string name)
    {
        foreach (var door in (string[])["api/files/", "api/working/"])
        {
            using var read = await studio.Client.GetAsync(door + name, TestContext.Current.CancellationToken);
            using var readProblem = await RefusalTests.ProblemOf(read, HttpStatusCode.BadRequest);
            using var write = await studio.Client.PutAsync(door + name, StudioFixture.Json("{}"), TestContext.Current.CancellationToken);
            using var writeProblem = await RefusalTests.ProblemOf(write, HttpStatusCode.BadRequest);
        }
    }

    [Fact]
    public async Task A_link_that_leads_out_is_not_followed()
    {
        var outside = Path.Combine(Path.GetTempPath(), $"outside-{Path.GetRandomFileName()}.json");
        await File.WriteAllTextAsync(outside, "{}", TestContext.Current.CancellationToken);
        try
        {
            File.CreateSymbolicLink(Path.Combine(studio.Folder, "link.json"), outside);
            using var read = await studio.Client.GetAsync("api/files/link.json", TestContext.Current.CancellationToken);
            using var problem = await RefusalTests.ProblemOf(read, HttpStatusCode.BadRequest);
        }
        finally
        {
            File.Delete(outside);
            File.Delete(Path.Combine(studio.Folder, "link.json"));
        }
    }

    [Fact]
    public async Task Saving_never_writes_over_what_somebody_else_changed()
    {
        var stop = TestContext.Current.CancellationToken;
        using var created = await studio.Client.PutAsync("api/files/mine.json", StudioFixture.Json("""{ "name": "one" }"""), stop);
        Assert.Equal(HttpStatusCode.OK, created.StatusCode);
        using var twice = await studio.Client.PutAsync("api/files/mine.json", StudioFixture.Json("""{ "name": "two" }"""), stop);
        using var taken = await RefusalTests.ProblemOf(twice, HttpStatusCode.PreconditionFailed);
        using var read = JsonDocument.Parse(await studio.Client.GetStringAsync("api/files/mine.json", stop));
        var tag = read.RootElement.GetProperty("tag").GetString();
        await File.WriteAllTextAsync(Path.Combine(studio.Folder, "mine.json"), """{ "name": "elsewhere" }""", stop);
        using var stale = await SaveAsync("mine.json", """{ "name": "three" }""", $"\"{tag}\"");
        using var changed = await RefusalTests.ProblemOf(stale, HttpStatusCode.PreconditionFailed);
        using var over = await SaveAsync("mine.json", """{ "name": "four" }""", "*");
        Assert.Equal(HttpStatusCode.OK, over.StatusCode);
        Assert.Equal("""{ "name": "four" }""", await File.ReadAllTextAsync(Path.Combine(studio.Folder, "mine.json"), stop));
        Assert.DoesNotContain(Directory.EnumerateFiles(studio.Folder), file => file.EndsWith(".tmp", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Work_is_kept_beside_the_brief_until_it_is_saved()
    {
        var stop = TestContext.Current.CancellationToken;
        const string work = """{ "name": "in hand" }""";
        using var kept = await studio.Client.PutAsync("api/working/short-tide.json", StudioFixture.Json(work), stop);
        Assert.Equal(HttpStatusCode.NoContent, kept.StatusCode);
        using var read = JsonDocument.Parse(await studio.Client.GetStringAsync("api/files/short-tide.json", stop));
        Assert.Equal(work, read.RootElement.GetProperty("working").GetString());
        Assert.Equal(StudioFixture.Sound, read.RootElement.GetProperty("text").GetString());
        using var saved = await SaveAsync("short-tide.json", StudioFixture.Sound, "*");
        using var gone = await studio.Client.GetAsync("api/working/short-tide.json", stop);
        using var problem = await RefusalTests.ProblemOf(gone, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Only_objects_are_written()
    {
        using var answer = await studio.Client.PutAsync("api/files/list.json", StudioFixture.Json("[1]"), TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.False(File.Exists(Path.Combine(studio.Folder, "list.json")));
    }

    private async Task<HttpResponseMessage> SaveAsync(string name, string text, string tag)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, $"api/files/{name}") { Content = StudioFixture.Json(text) };
        request.Headers.TryAddWithoutValidation("If-Match", tag);
        return await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
