using System.CommandLine;

namespace Linewright.Cli;

/// <summary>sheet: draws the technical sheet into a folder, all or nothing.</summary>
internal static class SheetVerb
{
    public static Command Create(Desk desk)
    {
        var page = new PageArguments("The paper: a4, drawn in first angle, or letter, in third.", hasDate: true);
        var verb = FolderVerb.Create(
            "sheet",
            "Draws the technical sheet for the bench: views, sections, dimensions, parts, finish, cautions.",
            desk,
            parse =>
            {
                var (size, day) = (page.Paper(parse), page.Date(parse));
                return (brief, folder, stage, stop) =>
                {
                    desk.TellUnprinted(brief);
                    return desk.Workbench.Sheet(brief, size, day, folder, stage, stop);
                };
            },
            (tables, report) =>
            {
                tables.Summary(report);
                tables.Findings(report, withPassed: false);
            });
        page.AddTo(verb);
        return verb;
    }
}
