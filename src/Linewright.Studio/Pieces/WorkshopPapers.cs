using Linewright.Checks;
using Linewright.Delivery;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Quote;
using Linewright.Tolerance;

namespace Linewright.Studio.Pieces;

/// <summary>The papers of one piece for bench and counter: sheet, plates, tolerance, what a quote starts from. Each is made once, when first asked for.</summary>
/// <remarks>The files are those that the command line writes, byte for byte.</remarks>
public sealed class WorkshopPapers(SolvedPiece solved)
{
    private readonly Stage<IReadOnlyDictionary<string, byte[]>> onA4 = new();
    private readonly Stage<IReadOnlyDictionary<string, byte[]>> onLetter = new();
    private readonly Stage<IReadOnlyDictionary<string, byte[]>> plates = new();
    private readonly Stage<LineVariation> variation = new();
    private readonly Stage<QuoteBasis> basis = new();

    /// <summary>True where a study of tolerances is a matter of drawing pieces: nothing needs to be meshed or measured for it.</summary>
    public bool IsVariationNear => solved.HasWalls;

    /// <summary>The technical sheet's files by name. One with a date is drawn each time.</summary>
    /// <param name="paper">A4 or letter.</param>
    /// <param name="date">For the title block; null leaves it empty.</param>
    /// <param name="stage">Told what is being done.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task<IReadOnlyDictionary<string, byte[]>> SheetAsync(PaperSize paper, DateOnly? date, IProgress<string> stage, CancellationToken stop)
    {
        var model = await solved.ModelAsync(stage, stop).ConfigureAwait(false);
        var found = await solved.FindingsAsync(stage, stop).ConfigureAwait(false);
        var made = await solved.MadeAsync(stage, stop).ConfigureAwait(false);
        var kept = date is not null ? new Stage<IReadOnlyDictionary<string, byte[]>>() : paper == PaperSize.A4 ? onA4 : onLetter;
        return await kept.GetAsync(
            () =>
            {
                stage.Report("Drawing the sheet");
                var report = Reports.WithFindings(Reports.Of(made), found, Cautions.For(solved.Brief));
                return FilesInMemory.Of(create => SheetFiles.Write(model, report, paper, date, create, stop));
            },
            stop).ConfigureAwait(false);
    }

    /// <summary>The printer's plates and the table of the trees, by name.</summary>
    public async Task<IReadOnlyDictionary<string, byte[]>> PlatesAsync(IProgress<string> stage, CancellationToken stop)
    {
        var patterns = await solved.CastingAsync(stage, stop).ConfigureAwait(false);
        return await plates.GetAsync(() => FilesInMemory.Of(create => CastingFiles.Write(patterns, create, stop)), stop).ConfigureAwait(false);
    }

    /// <summary>How a lot of such pieces comes out.</summary>
    /// <param name="pieces">How many to draw.</param>
    /// <param name="seed">Which lot.</param>
    /// <param name="stage">Told what is being done.</param>
    /// <param name="stop">Asks to stop.</param>
    public async Task<ToleranceReport> ToleranceAsync(int pieces, long seed, IProgress<string> stage, CancellationToken stop)
    {
        var walls = await solved.WallsAsync(stage, stop).ConfigureAwait(false);
        var line = await variation.GetAsync(() => LineVariations.Of(solved.Piece, WallReading.Of(solved.Piece, walls)), stop).ConfigureAwait(false);
        return await Task.Run(() => ToleranceStudy.Of(line, pieces, seed, stop), stop).ConfigureAwait(false);
    }

    /// <summary>What a quote needs to know: weights as the command line takes them, and counts.</summary>
    public async Task<QuoteBasis> BasisAsync(IProgress<string> stage, CancellationToken stop)
    {
        var plan = await solved.PlanAsync(stage, stop).ConfigureAwait(false);
        return await basis.GetAsync(() => QuoteBasis.Of(plan), stop).ConfigureAwait(false);
    }
}
