using System.CommandLine;
using System.Globalization;
using Linewright.Paper;

namespace Linewright.Cli;

/// <summary>sheet: draws the technical sheet into a folder, all or nothing.</summary>
internal static class SheetVerb
{
    private static readonly string[] Papers = ["a4", "letter"];

    public static Command Create(Desk desk)
    {
        var paper = new Option<string>("--paper")
        {
            Description = "The paper: a4, drawn in first angle, or letter, in third.",
            HelpName = "a4|letter",
            DefaultValueFactory = _ => Papers[0],
        };
        var date = new Option<string>("--date") { Description = "The date in the title block; left out, it stays empty.", HelpName = "YYYY-MM-DD" };
        var verb = FolderVerb.Create(
            "sheet",
            "Draws the technical sheet for the bench: views, sections, dimensions, parts, finish, cautions.",
            desk,
            parse =>
            {
                var (size, day) = (PaperOf(parse.GetValue(paper)!), DateOf(parse.GetValue(date)));
                return (brief, folder, stage, stop) => desk.Workbench.Sheet(brief, size, day, folder, stage, stop);
            },
            (tables, report) =>
            {
                tables.Summary(report);
                tables.Findings(report, withPassed: false);
            });
        verb.Options.Add(paper);
        verb.Options.Add(date);
        return verb;
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
