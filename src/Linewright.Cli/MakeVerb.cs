using System.CommandLine;
using Linewright.Brief;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Quote;

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
        var prices = new PriceArguments(isRequired: false);
        var verb = Verb.Create(
            "make",
            "Writes the castable parts, the assembly and the report into a folder.",
            desk,
            (parse, brief, stage, stop) =>
            {
                var path = parse.GetRequiredValue(folderOption);
                var list = prices.Read(parse);
                using var folder = OutputFolder.Open(path, parse.GetValue(force));
                using var onStop = stop.Register(folder.Discard);
                try
                {
                    Price(parse, prices, list, desk, brief, folder, stage, stop);
                    return Write(desk, brief, folder, stage, stop);
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
                tables.Parts(report);
                tables.Weights(report);
                tables.Findings(report, withPassed: false);
                tables.Written(parse.GetRequiredValue(folderOption));
            });
        verb.Options.Add(folderOption);
        verb.Options.Add(force);
        prices.AddTo(verb);
        return verb;
    }

    // Before the work and not after it: a list with a hole is told at once.
    private static void Price(
        ParseResult parse, PriceArguments prices, PriceList? list, Desk desk, ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        if (list is not null)
        {
            var quote = desk.Workbench.Quote(brief, list, parse.GetValue(prices.Grade), stage, stop).Quote;
            prices.Demand(parse, quote);
            QuoteFiles.Write(quote, brief, folder.Create);
        }
    }

    private static Report Write(Desk desk, ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        var report = desk.Workbench.Make(brief, folder, stage, stop);
        using (var file = folder.Create("report.json"))
        {
            ReportJson.Write(report, file);
        }

        stop.ThrowIfCancellationRequested();
        folder.Publish();
        return report;
    }
}
