using System.CommandLine;
using Linewright.Brief;
using Linewright.Making;

namespace Linewright.Cli;

/// <summary>How every verb on a brief runs: read, work, answer with tables or JSON, and say by the exit code whether a check fails.</summary>
internal static class Verb
{
    /// <summary>Builds a verb from its work and its tables.</summary>
    public static Command Create(
        string name,
        string description,
        Desk desk,
        Func<ParseResult, ResolvedBrief, IProgress<string>, CancellationToken, Report> work,
        Action<ParseResult, ReportTables, Report> tables)
    {
        var verb = new Command(name, description);
        var arguments = new BriefArguments();
        arguments.AddTo(verb);
        verb.SetAction(async (parse, stop) =>
        {
            var brief = arguments.Read(parse, desk);
            Report report;
            using (var stage = new StageLine(desk.Error, desk.ShowsProgress))
            {
                // Beside this thread, so that Ctrl+C is heard while the work goes on.
                report = await Task.Run(() => work(parse, brief, stage, stop), stop).ConfigureAwait(false);
            }

            if (parse.GetValue(arguments.Json))
            {
                ReportJson.Write(report, desk.Out);
                desk.Out.Flush();
            }
            else
            {
                using var printer = new ReportTables(desk);
                tables(parse, printer, report);
            }

            return report.Fails() ? ExitCode.CheckFails : ExitCode.Done;
        });
        return verb;
    }
}
