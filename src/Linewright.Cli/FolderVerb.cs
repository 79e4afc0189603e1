using System.CommandLine;
using Linewright.Brief;
using Linewright.Making;

namespace Linewright.Cli;

/// <summary>How every verb that writes a folder runs: --out and --force, the files, report.json last, all or nothing.</summary>
internal static class FolderVerb
{
    /// <summary>What such a verb does: writes its files into the folder and returns the report.</summary>
    public delegate Report FolderWork(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds a verb from its work, which reads the verb's own arguments before the folder is opened, and its tables.</summary>
    public static Command Create(
        string name,
        string description,
        Desk desk,
        Func<ParseResult, FolderWork> work,
        Action<ReportTables, Report> tables)
    {
        var folderOption = new Option<string>("--out")
        {
            Description = "The folder to write; made anew, or an earlier one of ours replaced.",
            HelpName = "DIR",
            Required = true,
        };
        var force = new Option<bool>("--force") { Description = "Replaces an earlier folder of ours though other files lie in it." };
        var verb = Verb.Create(
            name,
            description,
            desk,
            (parse, brief, stage, stop) =>
            {
                var path = parse.GetRequiredValue(folderOption);
                var asked = work(parse);
                using var folder = OutputFolder.Open(path, parse.GetValue(force));
                using var onStop = stop.Register(folder.Discard);
                try
                {
                    return Write(asked, brief, folder, stage, stop);
                }
                catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
                {
                    // Files that vanish under a verb that was stopped are no fault of the disk.
                    stop.ThrowIfCancellationRequested();
                    throw new RefusalException(ExitCode.Ours, $"{path}: a file could not be written ({slip.Message.TrimEnd('.')}); nothing was written; make room, or choose another folder");
                }
            },
            (parse, printer, report) =>
            {
                tables(printer, report);
                printer.Written(parse.GetRequiredValue(folderOption));
            });
        verb.Options.Add(folderOption);
        verb.Options.Add(force);
        return verb;
    }

    private static Report Write(FolderWork work, ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        var report = work(brief, folder, stage, stop);
        using (var file = folder.Create("report.json"))
        {
            ReportJson.Write(report, file);
        }

        stop.ThrowIfCancellationRequested();
        folder.Publish();
        return report;
    }
}
