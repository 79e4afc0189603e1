using System.CommandLine;

namespace Linewright.Cli;

/// <summary>weigh: metal and stones.</summary>
internal static class WeighVerb
{
    public static Command Create(Desk desk) => Verb.Create(
        "weigh",
        "Weighs the metal, finished, cast and to melt, and the stones.",
        desk,
        (_, brief, stage, stop) => desk.Workbench.Weigh(brief, stage, stop),
        (_, tables, report) =>
        {
            tables.Summary(report);
            tables.Parts(report);
            tables.Weights(report);
            tables.Alloys(report);
        });
}
