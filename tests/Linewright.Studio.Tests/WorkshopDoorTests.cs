using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Checks;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Tolerance;

namespace Linewright.Studio.Tests;

/// <summary>Sheet, plates and tolerance over HTTP: the same bytes as the chain gives without a server.</summary>
public class WorkshopDoorTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    // On coarse meshes: the same bytes are asked for, not fine ones.
    internal const string Coarse = """
        { "name": "Short tide", "stone": { "species": "sapphire", "diameter_mm": 2.6 }, "metal": "gold-750-yellow", "length": { "laid_flat_mm": 160 }, "process": { "mesh_deviation_um": 40 } }
        """;

    // The chain run once by itself, as the command line runs it.
    private static readonly Lazy<(MadePiece Made, IReadOnlyList<Finding> Findings)> Chain = new(() =>
    {
        var made = Workshop.Make(PartsBuilder.Build(LineDesign.Solve(Resolved())));
        return (made, PieceChecks.Run(made.Model));
    });

    private static readonly Lazy<Dictionary<string, byte[]>> OnA4 = new(() => SheetOn(PaperSize.A4));

    [Theory]
    [InlineData("api/sheet", "sheet.pdf")]
    [InlineData("api/sheet?format=svg&page=2", "sheet-2.svg")]
    [InlineData("api/sheet?format=dxf", "outlines.dxf")]
    public async Task The_sheet_is_the_one_that_the_command_draws(string door, string file)
    {
        using var answer = await studio.PostAsync(door, Coarse, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.StartsWith("short-tide-", answer.Content.Headers.ContentDisposition!.FileName, StringComparison.Ordinal);
        Assert.Equal(OnA4.Value[file], await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task For_the_screen_all_pages_come_at_once()
    {
        using var answer = await studio.PostAsync("api/sheet?format=svg", Coarse, TestContext.Current.CancellationToken);
        using var sheet = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        var files = OnA4.Value;
        var pages = sheet.RootElement.GetProperty("pages").EnumerateArray().Select(page => page.GetString()!).ToList();
        Assert.Equal(files.Keys.Count(name => name.EndsWith(".svg", StringComparison.Ordinal)), pages.Count);
        Assert.All(pages.Index(), page => Assert.Equal(Encoding.UTF8.GetString(files[FormattableString.Invariant($"sheet-{page.Index + 1}.svg")]), page.Item));
    }

    [Fact]
    public async Task The_plate_is_the_file_of_the_command_and_every_pattern_stands_on_it()
    {
        var stop = TestContext.Current.CancellationToken;
        var made = Chain.Value.Made;
        var patterns = CastingPlans.Patterns(made.Casting, stop);
        var (plan, files) = (patterns.Plan, Written(create => CastingFiles.Write(patterns, create, stop)));
        using var plate = await studio.PostAsync("api/plate?format=3mf", Coarse, stop);
        Assert.Equal("model/3mf", plate.Content.Headers.ContentType!.MediaType);
        Assert.Equal(files["plate.3mf"], await plate.Content.ReadAsByteArrayAsync(stop));
        using var trees = await studio.PostAsync("api/plate?format=csv", Coarse, stop);
        Assert.Equal(files["tree.csv"], await trees.Content.ReadAsByteArrayAsync(stop));

        using var answer = await studio.PostAsync("api/plate", Coarse, stop);
        var view = JsonNode.Parse(await answer.Content.ReadAsStringAsync(stop))!;
        var (wide, deep) = (view["plate_mm"]![0]!.GetValue<double>(), view["plate_mm"]![1]!.GetValue<double>());
        Assert.Equal(plan.Report.MetalToWeighOutG, view["casting"]!["metal_to_weigh_out_g"]!.GetValue<double>(), 1e-6);
        var boxes = view["plates"]!.AsArray().SelectMany((one, number) => one!["places"]!.AsArray().Select(place => (Plate: number, Box: BoxOf(view, place!)))).ToList();
        Assert.Equal(plan.Plates.Sum(one => one.Places.Length), boxes.Count);
        Assert.All(boxes, one => Assert.True(one.Box.Left > -0.02 && one.Box.Front > -0.02 && one.Box.Right < wide + 0.02 && one.Box.Back < deep + 0.02, $"{one}"));

        // Drawn lines keep apart as the patterns do: half the asked gap leaves room for what drawing straightens.
        Assert.All(boxes.Index(), one => Assert.DoesNotContain(boxes.Skip(one.Index + 1), other => other.Plate == one.Item.Plate
            && other.Box.Left < one.Item.Box.Right + 0.5 && other.Box.Right + 0.5 > one.Item.Box.Left && other.Box.Front < one.Item.Box.Back + 0.5 && other.Box.Back + 0.5 > one.Item.Box.Front));
    }

    [Fact]
    public async Task The_tolerance_is_the_report_of_the_command_with_its_pieces_and_seed()
    {
        using var answer = await studio.PostAsync("api/tolerance?pieces=2000&seed=7", Coarse, TestContext.Current.CancellationToken);
        var model = Chain.Value.Made.Model;
        Assert.Equal(StudyText(model, PieceChecks.Walls(model, TestContext.Current.CancellationToken), 2000, 7), await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_changed_spread_takes_the_walls_already_measured_and_answers_as_if_measured_anew()
    {
        var stop = TestContext.Current.CancellationToken;
        using var before = await studio.PostAsync("api/tolerance", Coarse, stop);
        using var first = JsonDocument.Parse(await before.Content.ReadAsStringAsync(stop));

        // By the query and by the brief itself: the same.
        using var set = await studio.PostAsync("api/tolerance?set=process.tolerance_mm=0.06&set=process.common_spread_um=30", Coarse, stop);
        var text = await set.Content.ReadAsStringAsync(stop);
        var anew = PieceModel.Build(PartsBuilder.Build(LineDesign.Solve(Resolved("process.tolerance_mm=0.06", "process.common_spread_um=30"))), stop: stop);
        Assert.Equal(StudyText(anew, PieceChecks.Walls(anew, stop), ToleranceStudy.UsualPieces, ToleranceStudy.UsualSeed), text);
        using var written = await studio.PostAsync(
            "api/tolerance", Coarse.Replace("\"process\": { ", "\"process\": { \"tolerance_mm\": 0.06, \"common_spread_um\": 30, ", StringComparison.Ordinal), stop);
        Assert.Equal(text, await written.Content.ReadAsStringAsync(stop));
        using var second = JsonDocument.Parse(text);
        Assert.True(YieldOf(second) < YieldOf(first) - 5, FormattableString.Invariant($"{YieldOf(first)} %, {YieldOf(second)} %"));
    }

    [Theory]
    [InlineData("api/sheet?format=docx", "format")]
    [InlineData("api/sheet?paper=a3", "paper")]
    [InlineData("api/sheet?date=tomorrow", "date")]
    [InlineData("api/plate?format=stl", "format")]
    [InlineData("api/tolerance?pieces=5", "pieces")]
    [InlineData("api/tolerance?seed=-1", "seed")]
    [InlineData("api/quote?format=doc", "format")]
    [InlineData("api/quote?paper=a5", "paper")]
    public async Task A_paper_that_is_not_made_names_what_was_asked_wrongly(string door, string parameter)
    {
        using var answer = await studio.PostAsync(door, Coarse, TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.StartsWith(parameter, problem.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("api/sheet")]
    [InlineData("api/plate")]
    [InlineData("api/tolerance")]
    public async Task A_brief_with_faults_has_no_papers(string door)
    {
        using var answer = await studio.PostAsync(door, """{ "name": "x" }""", TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.NotEqual(0, problem.RootElement.GetProperty("faults").GetArrayLength());
    }

    [Fact]
    public async Task A_page_or_plate_that_is_not_there_is_not_found()
    {
        using var page = await studio.PostAsync("api/sheet?format=svg&page=40", Coarse, TestContext.Current.CancellationToken);
        using var first = await RefusalTests.ProblemOf(page, HttpStatusCode.NotFound);
        using var plate = await studio.PostAsync("api/plate?format=3mf&plate=9", Coarse, TestContext.Current.CancellationToken);
        using var second = await RefusalTests.ProblemOf(plate, HttpStatusCode.NotFound);
        Assert.Contains("plate-9.3mf", second.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_assignment_that_is_wrong_is_a_fault_of_the_brief()
    {
        using var answer = await studio.PostAsync("api/tolerance?set=process.tolerance_mm=ten", Coarse, TestContext.Current.CancellationToken);
        using var problem = await RefusalTests.ProblemOf(answer, HttpStatusCode.BadRequest);
        Assert.Equal("process.tolerance_mm", problem.RootElement.GetProperty("faults")[0].GetProperty("path").GetString());
    }

    internal static ResolvedBrief Resolved(params string[] assignments)
        => BriefDefaults.Resolve(BriefReader.Override(Encoding.UTF8.GetBytes(Coarse), "brief", assignments).Brief!);

    internal static Dictionary<string, byte[]> Written(Action<Func<string, Stream>> write)
    {
        var files = new Dictionary<string, MemoryStream>(StringComparer.Ordinal);
        write(name => files[name] = new MemoryStream());
        return files.ToDictionary(file => file.Key, file => file.Value.ToArray(), StringComparer.Ordinal);
    }

    private static Dictionary<string, byte[]> SheetOn(PaperSize paper)
    {
        var (made, findings) = Chain.Value;
        var report = Reports.WithFindings(Reports.Of(made), findings, Cautions.For(made.Model.Piece.Design.Brief));
        return Written(create => SheetFiles.Write(made.Model, report, paper, null, create, TestContext.Current.CancellationToken));
    }

    private static string StudyText(PieceModel model, IReadOnlyList<Finding> walls, int pieces, long seed)
    {
        using var text = new MemoryStream();
        ReportJson.Write(Reports.Of(model.Piece.Design) with { Tolerance = ToleranceStudy.Of(model.Piece, walls, pieces, seed, TestContext.Current.CancellationToken) }, text);
        return Encoding.UTF8.GetString(text.ToArray());
    }

    private static double YieldOf(JsonDocument report) => report.RootElement.GetProperty("tolerance").GetProperty("yield").GetProperty("percent").GetDouble();

    private static (double Left, double Front, double Right, double Back) BoxOf(JsonNode view, JsonNode place)
    {
        var pattern = view["patterns"]!.AsArray().Single(one => one!["part"]!.GetValue<string>() == place["part"]!.GetValue<string>())!;
        var turn = place["turn_deg"]!.GetValue<double>() * Math.PI / 180;
        double x = place["x_mm"]!.GetValue<double>(), y = place["y_mm"]!.GetValue<double>();
        var points = pattern["lines"]!.AsArray().SelectMany(line => line!.AsArray().Select(value => value!.GetValue<double>()).Chunk(2)).ToList();
        var placed = points.Select(point => (X: x + point[0] * Math.Cos(turn) - point[1] * Math.Sin(turn), Y: y + point[0] * Math.Sin(turn) + point[1] * Math.Cos(turn))).ToList();
        return (placed.Min(point => point.X), placed.Min(point => point.Y), placed.Max(point => point.X), placed.Max(point => point.Y));
    }
}
