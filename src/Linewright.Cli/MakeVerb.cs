using System.CommandLine;
using Linewright.Making;

namespace Linewright.Cli;

/// <summary>make: writes the parts, the assembly and the report into a folder, all or nothing.</summary>
internal static class MakeVerb
{
    public static Command Create(Desk desk)
    {
        var folderOption = new Option<string>("--out")
        {
            Description = "The folder to write; made anew, or an earlier one of ours replaced.",
            HelpName = "DIR",
            Required = true,
        };
        var force = new Option<bool>("--force") { Description = "Replaces an earlier folder of ours though other files lie in it." };
        var verb = Verb.Create(
            "make",
            "Writes the castable parts, the assembly and the report into a folder.",
            desk,
            (parse, brief, stage, stop) =>
            {
                using var folder = OutputFolder.Open(parse.GetRequiredValue(folderOption), parse.GetValue(force));
                using var onStop = stop.Register(folder.Discard);
                var report = desk.Workbench.Make(brief, folder, stage, stop);
                using (var file = folder.Create("report.json"))
                {
                    ReportJson.Write(report, file);
                }

                stop.ThrowIfCancellationRequested();
                folder.Publish();
                return report;
            },
            (parse, tables, report) =>
            {
                tables.Summary(report);
                tables.Parts(report);
                tables.Weights(report);
                tables.Findings(report, withPassed: false);
                tables.Written(parse.GetRequiredValue(folderOption));
            });
        verb.Options.Add(folderOption);
        verb.Options.Add(force);
        return verb;
    }
}
