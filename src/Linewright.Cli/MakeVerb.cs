using System.CommandLine;

namespace Linewright.Cli;

/// <summary>make: writes the parts, the assembly and the report into a folder, all or nothing.</summary>
internal static class MakeVerb
{
    public static Command Create(Desk desk) => FolderVerb.Create(
        "make",
        "Writes the castable parts, the assembly and the report into a folder.",
        desk,
        desk.Workbench.Make,
        (tables, report) =>
        {
            tables.Summary(report);
            tables.Parts(report);
            tables.Weights(report);
            tables.Findings(report, withPassed: false);
        });
}
