using System.CommandLine;

namespace Linewright.Cli;

/// <summary>check: builds the parts and measures them.</summary>
internal static class CheckVerb
{
    public static Command Create(Desk desk) => Verb.Create(
        "check",
        "Builds the parts and measures every clearance, wall and spring on them.",
        desk,
        (_, brief, stage, stop) => desk.Workbench.Check(brief, stage, stop),
        (_, tables, report) =>
        {
            tables.Summary(report);
            tables.Findings(report, withPassed: true);
        });
}
