using Linewright.Brief;
using Linewright.Checks;
using Linewright.Cli;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Quote;
using Linewright.Staging;
using Linewright.Tests.Core;

namespace Linewright.Tests.Cli;

/// <summary>Answers every verb with the sample report, and writes what a test asks for.</summary>
internal sealed class SampleWorkbench(params Verdict[] verdicts) : IWorkbench
{
    /// <summary>The brief that the verb was given last.</summary>
    public ResolvedBrief? Asked { get; private set; }

    /// <summary>The briefs that a grid was asked for last.</summary>
    public IReadOnlyList<ResolvedBrief> GridAsked { get; private set; } = [];

    /// <summary>Runs in the middle of make, after the first file.</summary>
    public Action<OutputFolder> Midway { get; init; } = _ => { };

    /// <summary>What the report says instead.</summary>
    public Func<Report, Report> Change { get; init; } = report => report;

    public Report Plan(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Answer(brief, stage) with { Parts = [], Weights = null };

    public Report Check(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Answer(brief, stage);

    public Report Weigh(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Answer(brief, stage);

    public (Report Report, PieceQuote Quote) Quote(ResolvedBrief brief, PriceList list, string? grade, IProgress<string> stage, CancellationToken stop)
    {
        Quoted++;
        return (Answer(brief, stage), Quotes.Of(SamplePrices.Basis, list, grade));
    }

    /// <summary>How many pieces were built for their price alone.</summary>
    public int Quoted { get; private set; }

    public QuoteGrid Grid(IReadOnlyList<GridAxis> axes, IReadOnlyList<ResolvedBrief> briefs, PriceList list, string? grade, bool isChecked, IProgress<string> stage, CancellationToken stop)
    {
        GridAsked = briefs;
        var cells = QuoteGrids.Combinations(axes).Select((values, index) => index == 0
            ? new GridCell(values, false, ["no line closes: the test says so"], null, null, null, null, null, null, null, null, null, null)
            : new GridCell(values, true, [], null, 48, 178, 12.40m, 4.8m, 900, 3000, 600, 4500, 7925.58m + index));
        return new QuoteGrid(axes, [.. cells], 8, 6);
    }

    /// <summary>How many pieces were drawn last, and which lot.</summary>
    public (int Pieces, long Seed) Lot { get; private set; }

    public Report Tolerance(ResolvedBrief brief, int pieces, long seed, IProgress<string> stage, CancellationToken stop)
    {
        Lot = (pieces, seed);
        return Answer(brief, stage);
    }

    public Report Plate(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop) => Make(brief, PaperSize.A4, null, null, folder, stage, stop);

    public Report Make(ResolvedBrief brief, PaperSize paper, DateOnly? date, Action<QuoteBasis>? priced, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        priced?.Invoke(SamplePrices.Basis);
        SheetAsked = (paper, date);
        using (var part = folder.Create("parts/link.stl"))
        {
            part.Write("solid"u8);
        }

        Midway(folder);
        stop.ThrowIfCancellationRequested();
        return Answer(brief, stage);
    }

    /// <summary>The paper and the date that the sheet was asked for last.</summary>
    public (PaperSize? Paper, DateOnly? Date) SheetAsked { get; private set; }

    public Report Sheet(ResolvedBrief brief, PaperSize paper, DateOnly? date, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        SheetAsked = (paper, date);
        using (var sheet = folder.Create("sheet.pdf"))
        {
            sheet.Write("%PDF"u8);
        }

        return Answer(brief, stage);
    }

    /// <summary>Runs while a picture is drawn.</summary>
    public Action<PictureOrder> Drawing { get; init; } = _ => { };

    public IPhotoSession Photograph(ResolvedBrief brief) => new SampleSession(Drawing);

    private Report Answer(ResolvedBrief brief, IProgress<string> stage)
    {
        stage.Report("measuring");
        Asked = brief;
        return Change(SampleReport.Of(brief, verdicts));
    }
}
