using Linewright.Brief;
using Linewright.Checks;
using Linewright.Cli;
using Linewright.Making;

namespace Linewright.Tests.Cli;

/// <summary>Answers every verb with the sample report, and writes what a test asks for.</summary>
internal sealed class SampleWorkbench(params Verdict[] verdicts) : IWorkbench
{
    /// <summary>The brief that the verb was given last.</summary>
    public ResolvedBrief? Asked { get; private set; }

    /// <summary>Runs in the middle of make, after the first file.</summary>
    public Action<OutputFolder> Midway { get; init; } = _ => { };

    /// <summary>What the report says instead.</summary>
    public Func<Report, Report> Change { get; init; } = report => report;

    public Report Plan(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Answer(brief, stage) with { Parts = [], Weights = null };

    public Report Check(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Answer(brief, stage);

    public Report Weigh(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Answer(brief, stage);

    /// <summary>How many pieces were drawn last, and which lot.</summary>
    public (int Pieces, long Seed) Lot { get; private set; }

    public Report Tolerance(ResolvedBrief brief, int pieces, long seed, IProgress<string> stage, CancellationToken stop)
    {
        Lot = (pieces, seed);
        return Answer(brief, stage);
    }

    public Report Plate(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop) => Make(brief, folder, stage, stop);

    public Report Make(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        using (var part = folder.Create("parts/link.stl"))
        {
            part.Write("solid"u8);
        }

        Midway(folder);
        stop.ThrowIfCancellationRequested();
        return Answer(brief, stage);
    }

    private Report Answer(ResolvedBrief brief, IProgress<string> stage)
    {
        stage.Report("measuring");
        Asked = brief;
        return Change(SampleReport.Of(brief, verdicts));
    }
}
