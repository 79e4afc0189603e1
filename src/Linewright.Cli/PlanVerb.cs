using System.CommandLine;

namespace Linewright.Cli;

/// <summary>plan: every layout that closes at the length asked for, best first.</summary>
internal static class PlanVerb
{
    public static Command Create(Desk desk) => Verb.Create(
        "plan",
        "Finds how many stones at what pitch close the line at its length.",
        desk,
        (_, brief, stage, stop) => desk.Workbench.Plan(brief, stage, stop),
        (_, tables, report) =>
        {
            tables.Summary(report);
            tables.Candidates(report);
            tables.Findings(report, withPassed: false);
        });
}
