using System.Diagnostics;
using System.Net;
using System.Text;
using System.Text.Json;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Parts;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;
using Linewright.Staging;
using Linewright.Studio.Serving;
using Microsoft.Extensions.DependencyInjection;

namespace Linewright.Studio.Tests;

/// <summary>Pictures over HTTP: ordered, watched, stopped, kept; and what is refused.</summary>
public class PictureTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    // Hours of work: whoever does not stop it is not stopped by its end.
    private const string Long = "api/picture?scene=link&quality=final&size=1600x1200";

    private PictureDesk Desk => studio.App.Services.GetRequiredService<PictureDesk>();

    [Fact]
    public async Task Every_file_is_byte_for_byte_what_the_photographer_takes_alone()
    {
        var stop = TestContext.Current.CancellationToken;
        var begun = await BeginAsync("api/picture?scene=link&quality=draft&size=64x48&seed=7&ground=clay&focus=1");
        using var request = new HttpRequestMessage(HttpMethod.Get, begun);
        request.Headers.Accept.ParseAdd("application/x-ndjson");
        using var answer = await studio.Client.SendAsync(request, stop);
        var told = (await answer.Content.ReadAsStringAsync(stop)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement).ToList();
        var shares = told.Select(line => line.GetProperty("share").GetDouble()).ToList();
        Assert.Equal(shares.Order(), shares);
        Assert.Equal("done", told[^1].GetProperty("state").GetString());
        Assert.Equal("short-tide-link.png", told[^1].GetProperty("name").GetString());
        Assert.Equal(16, told[^1].GetProperty("samples").GetDouble(), 6);
        Assert.All(told[..^1], line => Assert.Contains(line.GetProperty("state").GetString(), (string[])["preparing", "drawing"]));

        // The command's own way: the same order, told of at the end only, on the pool's threads.
        var brief = BriefDefaults.Resolve(BriefReader.Read(Encoding.UTF8.GetBytes(StudioFixture.Sound), "brief").Brief!);
        var model = PieceModel.Build(PartsBuilder.Build(LineDesign.Solve(brief)), stop: stop);
        var order = new PictureOrder(new StageOptions(SceneKind.Link, new PictureSize(64, 48)) { Ground = StageGround.Clay, FocusStone = 1 }, RenderQuality.Draft) { Seed = 7 };
        var picture = new Photographer(model).Take(order, null, stop);
        foreach (var (format, name, bits) in new[] { ("png", "short-tide-link.png", 8), ("png16", "short-tide-link-16-bit.png", 16), ("pfm", "short-tide-link.pfm", 32) })
        {
            using var file = await studio.Client.GetAsync($"{begun}/file?format={format}", stop);
            Assert.Equal(name, file.Content.Headers.ContentDisposition!.FileName);
            using var wanted = new MemoryStream();
            PictureFile.Write(wanted, name, picture, bits);
            Assert.Equal(wanted.ToArray(), await file.Content.ReadAsByteArrayAsync(stop));
        }

        using var latest = JsonDocument.Parse(await studio.Client.GetStringAsync("api/picture", stop));
        Assert.Equal(begun, latest.RootElement.GetProperty("latest").GetProperty("picture").GetString());
    }

    [Fact]
    public async Task A_picture_lets_go_soon_after_it_is_stopped_and_keeps_what_it_has()
    {
        var stop = TestContext.Current.CancellationToken;
        var begun = await BeginAsync(Long);
        await UntilSeenAsync(begun);
        using (var look = await studio.Client.GetAsync($"{begun}/view", stop))
        {
            Assert.Equal((1600, 1200), SizeOf(await look.Content.ReadAsByteArrayAsync(stop)));
        }

        foreach (var (door, word) in new[] { ("view?whole=maybe", "whole"), ("file?format=gif", "format") })
        {
            using var refused = await studio.Client.GetAsync($"{begun}/{door}", stop);
            using var problem = await RefusalTests.ProblemOf(refused, HttpStatusCode.BadRequest);
            Assert.StartsWith(word, problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }

        // Left alone it would draw for hours.
        var watch = Stopwatch.StartNew();
        using var stopped = await studio.Client.DeleteAsync(begun, stop);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 60);
        using var told = JsonDocument.Parse(await stopped.Content.ReadAsStringAsync(stop));
        Assert.Equal("stopped", told.RootElement.GetProperty("state").GetString());
        using var file = await studio.Client.GetAsync($"{begun}/file", stop);
        Assert.Equal("short-tide-link-unfinished.png", file.Content.Headers.ContentDisposition!.FileName);
        Assert.Equal((1600, 1200), SizeOf(await file.Content.ReadAsByteArrayAsync(stop)));
    }

    [Fact]
    public async Task A_picture_can_be_stopped_before_there_is_anything_to_see()
    {
        // Another stone: its parts are not meshed yet.
        var stop = TestContext.Current.CancellationToken;
        var begun = await BeginAsync(Long, StudioFixture.Sound.Replace("2.6", "3.4", StringComparison.Ordinal));
        using (var look = await studio.Client.GetAsync($"{begun}/view", stop))
        {
            using var problem = await RefusalTests.ProblemOf(look, HttpStatusCode.Conflict);
        }

        // Left alone it would draw for hours.
        var watch = Stopwatch.StartNew();
        using var stopped = await studio.Client.DeleteAsync(begun, stop);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 60);
        using var told = JsonDocument.Parse(await stopped.Content.ReadAsStringAsync(stop));
        Assert.Equal("stopped", told.RootElement.GetProperty("state").GetString());
        Assert.Equal(0, told.RootElement.GetProperty("view").GetInt32());
    }

    [Fact]
    public async Task A_new_order_takes_the_place_of_the_last()
    {
        var stop = TestContext.Current.CancellationToken;
        var first = await BeginAsync(Long);
        var job = Desk.Latest!;
        var second = await BeginAsync("api/picture?scene=link&quality=draft&size=32x24&denoise=off&transparent=true&ground=none");
        Assert.Equal(Wire.PictureState.Stopped, job.Now().Status.State);
        using (var gone = await studio.Client.GetAsync(first, stop))
        {
            using var problem = await RefusalTests.ProblemOf(gone, HttpStatusCode.NotFound);
        }

        await EndAsync(Desk.Latest!);
        using var file = await studio.Client.GetAsync($"{second}/file", stop);
        var png = await file.Content.ReadAsByteArrayAsync(stop);

        // Colour type 6 of the header: with alpha. Source: ISO/IEC 15948, 11.2.2.
        Assert.Equal(6, png[25]);
    }

    [Fact]
    public async Task A_picture_whose_page_is_closed_is_stopped()
    {
        var patience = Desk.Patience;
        try
        {
            using var leaving = new CancellationTokenSource();
            var begun = await BeginAsync(Long);
            var job = Desk.Latest!;
            using var request = new HttpRequestMessage(HttpMethod.Get, begun);
            request.Headers.Accept.ParseAdd("application/x-ndjson");
            using (await studio.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, leaving.Token))
            {
                // Watched, it goes on, however short the patience. A busy machine may take longer than that to begin to watch.
                Desk.Patience = TimeSpan.FromMilliseconds(300);
                await Task.Delay(1000, TestContext.Current.CancellationToken);
                Assert.False(job.Stop.IsCancellationRequested);
            }

            await leaving.CancelAsync();
            await EndAsync(job, isWatched: false);
            Assert.Equal(Wire.PictureState.Stopped, job.Now().Status.State);
        }
        finally
        {
            Desk.Patience = patience;
        }
    }

    [Fact]
    public async Task A_file_is_handed_on_as_it_is_written_and_never_lies_there_whole()
    {
        var stop = TestContext.Current.CancellationToken;
        var begun = await BeginAsync(Long);
        await UntilSeenAsync(begun);
        using var stopped = await studio.Client.DeleteAsync(begun, stop);
        const long light = 1600 * 1200 * 3 * sizeof(float);
        foreach (var format in (string[])["png", "png16", "pfm"])
        {
            // The second time nothing is compiled or set up any more.
            await FetchAsync(format);
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var length = await FetchAsync(format);
            var held = GC.GetTotalAllocatedBytes(precise: true) - before;
            Assert.True(length > 500_000, FormattableString.Invariant($"{format}: {length} bytes"));
            Assert.True(held < light / 4, FormattableString.Invariant($"{format}: {held} bytes were taken for a file of {length}"));
        }

        async Task<long> FetchAsync(string format)
        {
            using var file = await studio.Client.GetAsync($"{begun}/file?format={format}", HttpCompletionOption.ResponseHeadersRead, stop);
            using var bytes = await file.Content.ReadAsStreamAsync(stop);
            var (part, length) = (new byte[1 << 14], 0L);
            for (int read; (read = await bytes.ReadAsync(part, stop)) > 0; length += read)
            {
                Assert.True(read <= part.Length);
            }

            return length;
        }
    }

    [Fact]
    public async Task A_picture_that_is_done_leaves_nothing_behind_but_its_light()
    {
        var desk = Desk;
        var stop = TestContext.Current.CancellationToken;

        // The piece is meshed, the line is laid, the code compiled: what is held after that is the picture's own.
        await BeginAsync("api/picture?scene=link&quality=draft&size=32x24");
        await EndAsync(desk.Latest!);
        var before = await HeldAsync();
        await BeginAsync("api/picture?scene=link&quality=draft&size=480x360&denoise=on");
        await EndAsync(desk.Latest!);
        Assert.Equal(Wire.PictureState.Done, desk.Latest!.Now().Status.State);
        Assert.Null(desk.Latest!.Standing!.Value.Picture.Guides);

        // Three colours and a cover of four bytes each. The sums it was drawn from would be five times as much, what its pixels show twice;
        // half of it is left to what the tests' own program takes meanwhile.
        const long light = 480 * 360 * 4 * sizeof(float);
        var held = long.MaxValue;
        for (var i = 0; i < 20 && held >= light * 3 / 2; i++)
        {
            held = await HeldAsync() - before;
        }

        Assert.True(held < light * 3 / 2, FormattableString.Invariant($"{held} bytes are held for a picture of {light}"));

        async Task<long> HeldAsync()
        {
            // The task that drew it ends a moment after the picture has.
            await Task.Delay(500, stop);
            return GC.GetTotalMemory(forceFullCollection: true);
        }
    }

    [Theory]
    [InlineData("scene", "round")]
    [InlineData("size", "large")]
    [InlineData("size", "4000x4000")]
    [InlineData("size", "8x8")]
    [InlineData("quality", "best")]
    [InlineData("ground", "sand")]
    [InlineData("transparent", "maybe")]
    [InlineData("focus", "0")]
    [InlineData("focus", "999")]
    [InlineData("seed", "-1")]
    [InlineData("denoise", "yes")]
    public async Task An_order_that_cannot_be_taken_says_which_option(string option, string value)
    {
        using var answer = await studio.PostAsync($"api/picture?{option}={value}", StudioFixture.Sound, TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.StartsWith($"{option}: read {value}, expected", problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_that_does_not_close_is_not_pictured()
    {
        const string brief = """
            { "name": "x", "stone": { "diameter_mm": 8 }, "metal": "gold-750-yellow", "length": { "laid_flat_mm": 100 }, "clasp": { "length_max_mm": 3 } }
            """;
        using var answer = await studio.PostAsync("api/picture", brief, TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.UnprocessableEntity);
        Assert.Contains("clasp", problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET", "")]
    [InlineData("GET", "/view")]
    [InlineData("GET", "/file")]
    [InlineData("DELETE", "")]
    public async Task A_picture_that_never_was_is_not_found(string method, string door)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), "api/picture/0123456789abcdef" + door);
        using var answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.NotFound);
    }

    private static (int Width, int Height) SizeOf(byte[] png)
        => (System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));

    // Drawn behind a busy machine it may outlast the desk's patience with nobody there.
    private static async Task EndAsync(PictureJob job, bool isWatched = true)
    {
        using var watching = isWatched ? job.Watch() : null;
        for (var (status, change) = job.Now(); !status.IsEnded; (status, change) = job.Now())
        {
            await change.WaitAsync(TimeSpan.FromMinutes(5), TestContext.Current.CancellationToken);
        }
    }

    private async Task<string> BeginAsync(string door, string brief = StudioFixture.Sound)
    {
        using var answer = await studio.PostAsync(door, brief, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        return answer.Headers.Location!.OriginalString;
    }

    private async Task UntilSeenAsync(string picture)
    {
        for (var i = 0; i < 6000; i++)
        {
            using var told = JsonDocument.Parse(await studio.Client.GetStringAsync(picture, TestContext.Current.CancellationToken));
            if (told.RootElement.GetProperty("view").GetInt32() > 0)
            {
                return;
            }

            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        Assert.Fail("nothing to see in five minutes");
    }
}
