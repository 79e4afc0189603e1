using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Checks;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Parts;
using Linewright.Quote;
using Linewright.Tolerance;

namespace Linewright.Cli;

/// <summary>The workbench of this program: the one place where the verbs meet the layout, the parts and the writers.</summary>
internal sealed class Workbench : IWorkbench
{
    /// <inheritdoc/>
    public Report Plan(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Reports.Of(Solve(brief));

    /// <inheritdoc/>
    public Report Check(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop)
    {
        var made = Made(brief, stage, stop);
        return Checked(made, Reports.Of(made), stage, stop);
    }

    /// <inheritdoc/>
    public Report Weigh(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => Reports.Of(Made(brief, stage, stop));

    /// <inheritdoc/>
    public (Report Report, PieceQuote Quote) Quote(ResolvedBrief brief, PriceList list, string? grade, IProgress<string> stage, CancellationToken stop)
    {
        var design = Solve(brief);
        stage.Report("Weighing");
        var plan = CastingPlans.Of(PartsBuilder.Build(design), stop: stop);
        return (Reports.Of(design), Quotes.Of(QuoteBasis.Of(plan), list, grade));
    }

    /// <inheritdoc/>
    public QuoteGrid Grid(IReadOnlyList<GridAxis> axes, IReadOnlyList<ResolvedBrief> briefs, PriceList list, string? grade, bool isChecked, IProgress<string> stage, CancellationToken stop)
        => QuoteGrids.Run(axes, briefs, list, grade, isChecked, new Counter(stage, briefs.Count, "Quoted", "cells"), stop);

    /// <inheritdoc/>
    public Report Tolerance(ResolvedBrief brief, int pieces, long seed, IProgress<string> stage, CancellationToken stop)
    {
        var design = Solve(brief);
        var piece = PartsBuilder.Build(design);
        stage.Report(FormattableString.Invariant($"Meshing {piece.Parts.Length} solids"));
        var model = PieceModel.Build(piece, new Counter(stage, piece.Parts.Length, "Meshed", "solids"), stop);
        stage.Report("Measuring the walls");
        var walls = PieceChecks.Walls(model, stop);
        stage.Report(FormattableString.Invariant($"Drawing {pieces} pieces"));
        var study = ToleranceStudy.Of(piece, walls, pieces, seed, stop);
        stage.Report("Trying the walls' reserve");
        return Reports.Of(design) with { Tolerance = WallReserves.Tried(brief, study, stop) };
    }

    /// <inheritdoc/>
    public Report Plate(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        var made = Made(brief, stage, stop);
        var casting = Casting(made, stage, stop);
        CastingFiles.Write(casting, folder.Create, stop);
        return Reports.Of(made) with { Casting = casting.Report };
    }

    /// <inheritdoc/>
    public Report Make(ResolvedBrief brief, PaperSize paper, DateOnly? date, Action<QuoteBasis>? priced, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        var piece = PartsBuilder.Build(Solve(brief));
        CastingPlan? plan = null;
        if (priced is not null)
        {
            stage.Report("Weighing");
            plan = CastingPlans.Of(piece, stop: stop);
            priced(QuoteBasis.Of(plan));
        }

        var made = Made(piece, plan, stage, stop);

        // Files and checks know nothing of each other: one processor each.
        var writing = Task.Run(
            () =>
            {
                var casting = Casting(made, stage, stop);
                PieceFiles.Write(made, casting, folder.Create, stage, stop);
                return casting.Report;
            },
            stop);
        var report = Checked(made, Reports.Of(made), stage, stop);
        var tolerance = ToleranceStudy.Of(made.Model.Piece, report.Findings, stop: stop);
        report = report with { Tolerance = tolerance, Casting = writing.GetAwaiter().GetResult() };
        stage.Report("Drawing the sheet");
        SheetFiles.Write(made.Model, report, paper, date, folder.Create, stop);
        return report;
    }

    /// <inheritdoc/>
    public Report Sheet(ResolvedBrief brief, PaperSize paper, DateOnly? date, OutputFolder folder, IProgress<string> stage, CancellationToken stop)
    {
        var made = Made(brief, stage, stop);
        var report = Checked(made, Reports.Of(made), stage, stop);
        stage.Report("Drawing the sheet");
        SheetFiles.Write(made.Model, report, paper, date, folder.Create, stop);
        return report;
    }

    /// <inheritdoc/>
    public IPhotoSession Photograph(ResolvedBrief brief) => new PhotoSession(PartsBuilder.Build(Solve(brief)));

    private static CastingPatterns Casting(MadePiece made, IProgress<string> stage, CancellationToken stop)
    {
        stage.Report("Spruing the parts");
        return CastingPlans.Patterns(made.Casting, stop);
    }

    private static LineDesign Solve(ResolvedBrief brief)
    {
        var design = LineDesign.Solve(brief);
        return design.Chosen is not null
            ? design
            : throw new RefusalException(ExitCode.Asked, $"{brief.Name}: no line closes: {design.Refusal}");
    }

    private static MadePiece Made(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop)
        => Made(PartsBuilder.Build(Solve(brief)), null, stage, stop);

    private static MadePiece Made(Piece piece, CastingPlan? plan, IProgress<string> stage, CancellationToken stop)
    {
        var count = 2 * piece.Parts.Length;
        stage.Report(FormattableString.Invariant($"Meshing {count} solids"));
        return Workshop.Make(piece, plan, new Counter(stage, count, "Meshed", "solids"), stop);
    }

    private static Report Checked(MadePiece made, Report report, IProgress<string> stage, CancellationToken stop)
    {
        var findings = PieceChecks.Run(made.Model, rule => stage.Report($"Checking {rule}"), stop);
        return Reports.WithFindings(report, findings, Cautions.For(made.Model.Piece.Design.Brief));
    }

    private sealed class Counter(IProgress<string> stage, int count, string done, string what) : IProgress<int>
    {
        public void Report(int value) => stage.Report(FormattableString.Invariant($"{done} {value} of {count} {what}"));
    }
}
