using System.CommandLine;
using System.Globalization;
using Linewright.Brief;
using Linewright.Making;
using Linewright.Paper;

namespace Linewright.Cli;

/// <summary>sheet: draws the technical sheet into a folder, all or nothing.</summary>
internal static class SheetVerb
{
    private static readonly string[] Papers = ["a4", "letter"];

    public static Command Create(Desk desk)
    {
        var folderOption = new Option<string>("--out")
        {
            Description = "The folder to write; made anew, or an earlier one of ours replaced.",
            HelpName = "DIR",
            Required = true,
        };
        var force = new Option<bool>("--force") { Description = "Replaces an earlier folder of ours though other files lie in it." };
        var paper = new Option<string>("--paper")
        {
            Description = "The paper: a4, drawn in first angle, or letter, in third.",
            HelpName = "a4|letter",
            DefaultValueFactory = _ => Papers[0],
        };
        var date = new Option<string>("--date") { Description = "The date in the title block; left out, it stays empty.", HelpName = "YYYY-MM-DD" };
        var verb = Verb.Create(
            "sheet",
            "Draws the technical sheet for the bench: views, sections, dimensions, parts, finish, cautions.",
            desk,
            (parse, brief, stage, stop) =>
            {
                var (size, day) = (PaperOf(parse.GetValue(paper)!), DateOf(parse.GetValue(date)));
                var path = parse.GetRequiredValue(folderOption);
                using var folder = OutputFolder.Open(path, parse.GetValue(force));
                using var onStop = stop.Register(folder.Discard);
                try
                {
                    return Write(desk, brief, size, day, folder, stage, stop);
                }
                catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
                {
                    // Files that vanish under a verb that was stopped are no fault of the disk.
                    stop.ThrowIfCancellationRequested();
                    throw new RefusalException(ExitCode.Ours, $"{path}: a file could not be written ({slip.Message.TrimEnd('.')}); nothing was written; make room, or choose another folder");
                }
            },
            (parse, tables, report) =>
            {
                tables.Summary(report);
                tables.Findings(report, withPassed: false);
                tables.Written(parse.GetRequiredValue(folderOption));
            });
        foreach (var option in (Option[])[folderOption, force, paper, date])
        {
            verb.Options.Add(option);
        }

        return verb;
    }

    private static Report Write(
        Desk desk, ResolvedBrief brief, PaperSize paper, DateOnly? date, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        var report = desk.Workbench.Sheet(brief, paper, date, folder, stage, stop);
        using (var file = folder.Create("report.json"))
        {
            ReportJson.Write(report, file);
        }

        stop.ThrowIfCancellationRequested();
        folder.Publish();
        return report;
    }

    private static PaperSize PaperOf(string name) => Array.IndexOf(Papers, name.ToLowerInvariant()) switch
    {
        0 => PaperSize.A4,
        1 => PaperSize.Letter,
        _ => throw new RefusalException(ExitCode.Asked, $"--paper: read '{name}', expected a4 or letter"),
    };

    private static DateOnly? DateOf(string? text) => text is null
        ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw new RefusalException(ExitCode.Asked, $"--date: read '{text}', expected a day as YYYY-MM-DD, such as 2026-03-31");
}
