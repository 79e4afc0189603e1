using System.Text;
using System.Text.Json;
using Linewright.Checks;
using Linewright.Cli;
using Linewright.Paper;

namespace Linewright.Tests.Cli;

public sealed class CliTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("linewright-tests-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("plan")]
    [InlineData("check")]
    [InlineData("weigh")]
    public void A_verb_that_passes_ends_with_0_and_one_that_fails_with_1(string verb)
    {
        Assert.Equal(ExitCode.Done, Run([verb, Brief()], new SampleWorkbench(Verdict.Pass, Verdict.Caution)).Code);
        Assert.Equal(ExitCode.CheckFails, Run([verb, Brief()], new SampleWorkbench(Verdict.Pass, Verdict.Fail)).Code);
    }

    [Fact]
    public void A_lot_of_pieces_is_drawn_as_asked()
    {
        var bench = new SampleWorkbench(Verdict.Pass);
        Assert.Equal(ExitCode.Done, Run(["tolerance", Brief(), "--pieces", "500", "--seed", "7"], bench).Code);
        Assert.Equal((500, 7), bench.Lot);
        Assert.Equal(ExitCode.Done, Run(["tolerance", Brief()], bench).Code);
        Assert.Equal((10_000, 1), bench.Lot);
        foreach (var wrong in (string[][])[["--pieces", "99"], ["--pieces", "1000001"], ["--seed", "-1"], ["--pieces", "many"]])
        {
            var (code, output, error) = Run(["tolerance", Brief(), .. wrong], bench);
            Assert.Equal((ExitCode.Asked, ""), (code, output));
            Assert.Contains(wrong[0], error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_plate_is_written_into_a_folder_of_its_own()
    {
        var place = Path.Combine(folder, "plate");
        Assert.Equal(ExitCode.Asked, Run(["plate", Brief()]).Code);
        Assert.Equal(ExitCode.Done, Run(["plate", Brief(), "--out", place], new SampleWorkbench(Verdict.Pass)).Code);
        Assert.True(File.Exists(Path.Combine(place, "report.json")));
    }

    [Theory]
    [InlineData(new string[0], "Required command was not provided.")]
    [InlineData(new[] { "plan" }, "BRIEF")]
    [InlineData(new[] { "bend" }, "read 'bend', expected one of plan, check, make, weigh, sheet, quote, schema")]
    [InlineData(new[] { "weight", "x.json" }, "read 'weight', expected one of plan, check, make, weigh, sheet, quote, schema")]
    [InlineData(new[] { "plan", "x.json", "y.json" }, "y.json")]
    [InlineData(new[] { "plan", "x.json", "--bogus" }, "--bogus")]
    [InlineData(new[] { "make", "x.json" }, "--out")]
    [InlineData(new[] { "plan", "x.json", "--set" }, "--set")]
    public void Wrong_arguments_end_with_2_and_point_to_the_help(string[] args, string named)
    {
        var (code, output, error) = Run(args);
        Assert.Equal(ExitCode.Asked, code);
        Assert.Empty(output);
        Assert.Contains(named, error, StringComparison.Ordinal);
        Assert.Contains("--help", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_faulty_brief_ends_with_2_and_every_fault_has_its_line()
    {
        var file = Write("faulty.json", SampleReport.Brief.Replace("3.0", "12").Replace("178.0", "1"));
        var (code, output, error) = Run(["plan", file]);
        Assert.Equal(ExitCode.Asked, code);
        Assert.Empty(output);
        Assert.Equal(
            [
                $"{file}:3:67: stone.diameter_mm: read 12, expected a number from 1.2 to 8 mm; 8 is the nearest that works",
                $"{file}:5:31: length.laid_flat_mm: read 1, expected a number from 100 to 1524 mm; 100 is the nearest that works",
            ],
            error.TrimEnd().Split('\n'));
    }

    [Fact]
    public void A_brief_that_is_not_there_ends_with_2()
    {
        var missing = Path.Combine(folder, "none.json");
        Assert.Equal((ExitCode.Asked, "", $"{missing}: no such file, expected a brief; check the path, or use - for standard input\n"), Run(["plan", missing]));
        Assert.Equal((ExitCode.Asked, "", $"{folder}: read a folder, expected a brief; name the JSON file in it\n"), Run(["plan", folder]));
    }

    [Fact]
    public void A_brief_is_read_from_standard_input()
    {
        var bench = new SampleWorkbench(Verdict.Pass);
        Assert.Equal(ExitCode.Done, Run(["plan", "-"], bench, input: SampleReport.Brief).Code);
        Assert.Equal("Harbour lights", bench.Asked!.Name);
        Assert.StartsWith("standard input:1:1: read a list", Run(["plan", "-"], bench, input: "[]").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Values_can_be_set_beside_the_file()
    {
        var bench = new SampleWorkbench(Verdict.Pass);
        Assert.Equal(ExitCode.Done, Run(["plan", Brief(), "--set", "stone.diameter_mm=3.5", "--set", "metal=silver-925"], bench).Code);
        Assert.Equal((3.5, "silver-925"), (bench.Asked!.Stone.DiameterMm, bench.Asked.Metal));
        var wrong = Run(["plan", Brief(), "--set", "stone.diameter_mm=35"], bench);
        Assert.Equal((ExitCode.Asked, "--set stone.diameter_mm: read 35, expected a number from 1.2 to 8 mm; 8 is the nearest that works\n"), (wrong.Code, wrong.Error));
    }

    [Fact]
    public void Json_is_the_report_and_nothing_else()
    {
        var (code, output, error) = Run(["check", Brief(), "--json"], new SampleWorkbench(Verdict.Fail));
        Assert.Equal((ExitCode.CheckFails, ""), (code, error));
        Assert.StartsWith("{\n  \"brief\": {", output, StringComparison.Ordinal);
        using var report = JsonDocument.Parse(output);
        Assert.Equal("smallest-wall", report.RootElement.GetProperty("findings")[0].GetProperty("rule").GetString());
    }

    [Fact]
    public void The_schema_is_printed_as_it_lies_in_the_examples()
        => Assert.Equal((ExitCode.Done, File.ReadAllText(Path.Combine(Repository.Root, "examples/linewright-brief.schema.json")), ""), Run(["schema"]));

    [Fact]
    public void Help_names_every_verb()
    {
        var (code, output, _) = Run(["--help"]);
        Assert.Equal(ExitCode.Done, code);
        Assert.All((string[])["plan", "check", "make", "weigh", "quote", "schema"], verb => Assert.Contains(verb, output, StringComparison.Ordinal));
    }

    [Fact]
    public void A_fault_of_ours_ends_with_3_and_shows_no_trace_unless_asked()
    {
        var bench = new SampleWorkbench { Midway = _ => throw new InvalidOperationException("a rail of no width") };
        var (code, _, error) = Run(["make", Brief(), "--out", Path.Combine(folder, "out")], bench);
        Assert.Equal((ExitCode.Ours, "linewright: a fault of ours: a rail of no width (LINEWRIGHT_TRACE=1 shows where)\n"), (code, error));
        Assert.Equal([Brief()], Directory.EnumerateFileSystemEntries(folder));
        Assert.Contains("   at ", Run(["make", Brief(), "--out", Path.Combine(folder, "out")], bench, trace: true).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_writes_the_folder_whole()
    {
        var place = Path.Combine(folder, "deep", "out");
        var (code, output, _) = Run(["make", Brief(), "--out", place], new SampleWorkbench(Verdict.Pass));
        Assert.Equal(ExitCode.Done, code);
        Assert.EndsWith($"written to {place}\n", output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Equal(["parts/link.stl", "report.json"], FilesOf(place));
        Assert.Equal([place], Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(place)!));
        Assert.Equal(Run(["make", Brief(), "--out", place, "--json"], new SampleWorkbench(Verdict.Pass)).Out, File.ReadAllText(Path.Combine(place, "report.json")));
    }

    [Fact]
    public void Make_replaces_an_earlier_folder_of_ours_and_no_other()
    {
        var place = Path.Combine(folder, "out");
        string[] make = ["make", Brief(), "--out", place];
        Directory.CreateDirectory(place);
        Assert.Equal(ExitCode.Done, Run(make, new SampleWorkbench()).Code); // an empty one will do
        File.WriteAllText(Path.Combine(place, "parts", "old-link.stl"), "");
        Assert.Equal(ExitCode.Done, Run(make, new SampleWorkbench()).Code);
        Assert.Equal(["parts/link.stl", "report.json"], FilesOf(place));

        File.WriteAllText(Path.Combine(place, "notes.txt"), "mine");
        var refused = Run(make, new SampleWorkbench());
        Assert.Equal((ExitCode.Ours, $"{place}: found an earlier folder of ours with notes.txt in it, expected a new folder or an earlier one of ours; move that away, or add --force to lose it\n"), (refused.Code, refused.Error));
        Assert.True(File.Exists(Path.Combine(place, "notes.txt")));
        Assert.Equal(ExitCode.Done, Run([.. make, "--force"], new SampleWorkbench()).Code);
        Assert.Equal(["parts/link.stl", "report.json"], FilesOf(place));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("{}")]
    [InlineData("no json")]
    [InlineData("[1]")]
    public void Make_never_touches_the_folder_of_somebody_else(string? report)
    {
        var place = Path.Combine(folder, "photos");
        Directory.CreateDirectory(place);
        File.WriteAllText(Path.Combine(place, "aunt.png"), "");
        if (report is not null)
        {
            File.WriteAllText(Path.Combine(place, "report.json"), report);
        }

        var before = FilesOf(place);
        var (code, _, error) = Run(["make", Brief(), "--out", place, "--force"], new SampleWorkbench());
        Assert.Equal(ExitCode.Ours, code);
        Assert.Contains("not empty and has no report.json of ours", error, StringComparison.Ordinal);
        Assert.Equal(before, FilesOf(place));
    }

    [Fact]
    public void Make_refuses_a_file_and_the_root()
    {
        Assert.Contains("found a file", Run(["make", Brief(), "--out", Brief()], new SampleWorkbench()).Error, StringComparison.Ordinal);
        Assert.Contains("the root of the disk", Run(["make", Brief(), "--out", Path.GetPathRoot(folder)!], new SampleWorkbench()).Error, StringComparison.Ordinal);
        Assert.Contains("no place to write", Run(["make", Brief(), "--out", Path.Combine(Brief(), "under-a-file")], new SampleWorkbench()).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_that_takes_no_folder_is_said_in_our_words()
    {
        var (code, output, error) = Run(["make", Brief(), "--out", Path.Combine(Brief(), "under", "out")], new SampleWorkbench());
        Assert.Equal((ExitCode.Ours, ""), (code, output));
        Assert.Equal($"{Path.Combine(Brief(), "under", "out")}: found no place to write ({Brief()} is a file), expected a new folder or an earlier one of ours; choose a folder that may be written\n", error);
        Assert.Equal((ExitCode.Asked, "", "--out: read an empty name, expected a folder; name one that is new, or an earlier one of ours\n"), Run(["make", Brief(), "--out", ""], new SampleWorkbench()));
        Assert.Equal((ExitCode.Asked, "", "BRIEF: read an empty name, expected a brief; name its file, or use - for standard input\n"), Run(["plan", ""]));
        Assert.Equal([Brief()], Directory.EnumerateFileSystemEntries(folder));
    }

    [Fact]
    public void A_folder_that_may_not_be_written_is_refused_before_the_work()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "rights do not bind whoever runs the tests");
        var place = Path.Combine(folder, "out");
        Directory.CreateDirectory(place);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(place, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        var bench = new SampleWorkbench { Midway = _ => Assert.Fail("the work was begun") };
        Assert.Equal((ExitCode.Ours, "", $"{place}: found a folder that may not be written, expected a new folder or an earlier one of ours; change its rights, or name another\n"), Run(["make", Brief(), "--out", place], bench));
        Assert.Equal(2, Directory.GetFileSystemEntries(folder).Length);
    }

    [Fact]
    public void A_disk_that_is_full_midway_leaves_nothing_behind()
    {
        var bench = new SampleWorkbench { Midway = _ => throw new IOException("No space left on device.") };
        var (code, _, error) = Run(["make", Brief(), "--out", Path.Combine(folder, "out")], bench);
        Assert.Equal((ExitCode.Ours, $"{Path.Combine(folder, "out")}: a file could not be written (No space left on device); nothing was written; make room, or choose another folder\n"), (code, error));
        Assert.Equal([Brief()], Directory.EnumerateFileSystemEntries(folder));
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("plan", "--json")]
    [InlineData("schema")]
    [InlineData("--help")]
    public void An_answer_that_cannot_be_written_is_said_without_a_trace(params string[] args)
    {
        if (args is ["plan", ..])
        {
            args = [.. args, Brief()];
        }

        using var error = new StringWriter { NewLine = "\n" };
        var desk = new Desk { In = Stream.Null, Out = new FullStream(), Error = error, Workbench = new SampleWorkbench() };
        Assert.Equal(ExitCode.Ours, CommandLine.Run(args, desk, TestContext.Current.CancellationToken));
        Assert.Equal("standard output: cannot be written (No space left on device), expected a place for the answer\n", error.ToString());
    }

    [Fact]
    public void A_message_that_nobody_can_hear_does_not_change_the_answer()
    {
        using var error = new DeafWriter();
        var desk = new Desk { In = Stream.Null, Out = Stream.Null, Error = error, ShowsProgress = true, Workbench = new SampleWorkbench(Verdict.Fail) };
        Assert.Equal(ExitCode.CheckFails, CommandLine.Run(["check", Brief()], desk, TestContext.Current.CancellationToken));
        Assert.Equal(ExitCode.Asked, CommandLine.Run(["check", Brief() + "x"], desk, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("check")]
    [InlineData("weigh")]
    [InlineData("make")]
    public void Json_has_the_same_keys_from_every_verb_and_no_progress_in_it(string verb)
    {
        string[] args = verb == "make" ? [verb, Brief(), "--json", "--out", Path.Combine(folder, "out")] : [verb, Brief(), "--json"];
        var (_, output, error) = Run(args, new SampleWorkbench(Verdict.Pass), forPeople: true);
        using var report = JsonDocument.Parse(output);
        string[] keys = verb == "plan"
            ? ["brief", "layout", "parts", "stones", "findings", "cautions"]
            : ["brief", "layout", "parts", "stones", "weights", "findings", "cautions"];
        Assert.Equal(keys, report.RootElement.EnumerateObject().Select(key => key.Name));
        Assert.DoesNotContain('\u001b', output);
        Assert.Contains("measuring", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_discarded_leaves_no_trace_and_takes_no_more_files()
    {
        var bench = new SampleWorkbench
        {
            Midway = made =>
            {
                Assert.Equal(2, Directory.GetFileSystemEntries(folder).Length); // the brief and the hidden folder
                made.Discard();
                made.Create("parts/more.stl").Dispose();
            },
        };
        var (code, _, error) = Run(["make", Brief(), "--out", Path.Combine(folder, "out")], bench);
        Assert.Equal((ExitCode.Stopped, "linewright: stopped; nothing was written\n"), (code, error));
        Assert.Equal([Brief()], Directory.EnumerateFileSystemEntries(folder));
    }

    [Theory]
    [InlineData("make")]
    [InlineData("sheet")]
    public void Pages_are_drawn_on_the_paper_and_with_the_date_that_are_asked_for(string verb)
    {
        var bench = new SampleWorkbench();
        string[] ask = [verb, Brief(), "--out", Path.Combine(folder, "out")];
        Assert.Equal(ExitCode.Done, Run(ask, bench).Code);
        Assert.Equal((PaperSize.A4, null), bench.SheetAsked); // No clock: without a date there is none
        Assert.Equal(ExitCode.Done, Run([.. ask, "--paper", "Letter", "--date", "2026-03-31"], bench).Code);
        Assert.Equal((PaperSize.Letter, new DateOnly(2026, 3, 31)), bench.SheetAsked);
        Assert.Equal(ExitCode.Asked, Run([.. ask, "--paper", "a3"], bench).Code);
        Assert.Equal(ExitCode.Asked, Run([.. ask, "--date", "31.3.2026"], bench).Code);
    }

    [Fact]
    public void A_make_that_is_stopped_leaves_the_earlier_folder_as_it_was()
    {
        var place = Path.Combine(folder, "out");
        string[] make = ["make", Brief(), "--out", place];
        Assert.Equal(ExitCode.Done, Run(make, new SampleWorkbench()).Code);
        File.WriteAllText(Path.Combine(place, "parts.csv"), "earlier");
        using var stop = new CancellationTokenSource();
        var (code, _, error) = Run(make, new SampleWorkbench { Midway = _ => stop.Cancel() }, stop: stop);
        Assert.Equal((ExitCode.Stopped, "linewright: stopped; nothing was written\n"), (code, error));
        Assert.Equal(["parts.csv", "parts/link.stl", "report.json"], FilesOf(place));
        Assert.Equal(2, Directory.GetFileSystemEntries(folder).Length);
    }

    [Theory]
    [InlineData("../escape")]
    [InlineData("/etc/escape")]
    [InlineData("parts//x")]
    [InlineData("")]
    public void A_file_outside_the_folder_is_refused(string name)
    {
        using var made = OutputFolder.Open(Path.Combine(folder, "out"), force: false);
        Assert.Throws<ArgumentException>(() => made.Create(name));
    }

    [Theory]
    [InlineData("plan", 80)]
    [InlineData("plan", 120)]
    [InlineData("check", 80)]
    [InlineData("check", 120)]
    [InlineData("weigh", 80)]
    public void Tables_read_well_at_a_width(string verb, int width)
    {
        var (_, output, error) = Run([verb, Brief()], new SampleWorkbench(Verdict.Pass, Verdict.Caution, Verdict.Fail), width: width);
        Assert.Empty(error);
        Assert.All(output.Split('\n'), line => Assert.InRange(line.Length, 0, width));
        Assert.DoesNotContain('\u001b', output);
        Golden.Match(Encoding.UTF8.GetBytes(output), FormattableString.Invariant($"tests/Linewright.Tests/Golden/Cli/{verb}-{width}.txt"));
    }

    [Fact]
    public void The_parts_table_weighs_castings_and_no_wire()
    {
        var bench = new SampleWorkbench { Change = report => report with { Parts = [report.Parts[0], report.Parts[0] with { Name = "pin", IsCast = false, CastG = 0 }] } };
        var rows = Run(["weigh", Brief()], bench).Out.Split('\n').Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToList();
        Assert.Equal(["link", "48", "12.35", "61.5", "0.200", "9.60", "48210"], rows.Single(row => row is ["link", ..]));
        Assert.Equal(["pin", "48", "12.35", "61.5", "drawn", "wire", "48210"], rows.Single(row => row is ["pin", ..]));
    }

    [Fact]
    public void Colour_and_progress_are_for_people()
    {
        var (_, output, error) = Run(["check", Brief()], new SampleWorkbench(Verdict.Fail), forPeople: true);
        Assert.Contains("\u001b[", output, StringComparison.Ordinal);
        Assert.Equal("\r\u001b[Kmeasuring\r\u001b[K", error);
    }

    [Fact]
    public void Markup_in_a_name_is_printed_as_it_is()
    {
        var file = Write("odd.json", SampleReport.Brief.Replace("Harbour lights", "[red]A[/] {0} [["));
        Assert.StartsWith("[red]A[/] {0} [[\n", Run(["plan", file], new SampleWorkbench()).Out, StringComparison.Ordinal);
    }

    private static IEnumerable<string> FilesOf(string place) => Directory.EnumerateFiles(place, "*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(place, file).Replace('\\', '/')).Order(StringComparer.Ordinal).ToList();

    private static (int Code, string Out, string Error) Run(
        string[] args, IWorkbench? bench = null, string input = "", int width = 80, bool forPeople = false, bool trace = false, CancellationTokenSource? stop = null)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(args, new Desk
        {
            In = new MemoryStream(Encoding.UTF8.GetBytes(input)),
            Out = output,
            Error = error,
            Width = width,
            HasColour = forPeople,
            ShowsProgress = forPeople,
            ShowsTrace = trace,
            Workbench = bench ?? new SampleWorkbench(),
        }, stop?.Token ?? TestContext.Current.CancellationToken);
        return (code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    /// <summary>A standard error that is closed.</summary>
    private sealed class DeafWriter : StringWriter
    {
        public override void Write(char value) => throw new IOException("Bad file descriptor");

        public override void Write(char[] buffer, int index, int count) => throw new IOException("Bad file descriptor");

        public override void Write(string? value) => throw new IOException("Bad file descriptor");
    }

    /// <summary>A disk without room.</summary>
    private sealed class FullStream : MemoryStream
    {
        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("No space left on device.");

        public override void Write(ReadOnlySpan<byte> buffer) => throw new IOException("No space left on device.");
    }

    private string Brief() => Write("brief.json", SampleReport.Brief);

    private string Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
