using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Casting;
using Linewright.Checks;
using Linewright.Parts;

namespace Linewright.Quote;

/// <summary>Quotes every cell of a grid; cells side by side on all processors, no solid measured twice.</summary>
public static class QuoteGrids
{
    /// <summary>Most cells of a grid: what a person can still compare, and some minutes of work.</summary>
    public const int MostCells = 500;

    /// <summary>How many combinations some axes have; a number past any that could be laid out stands for all beyond it.</summary>
    public static long Count(IReadOnlyList<GridAxis> axes)
    {
        ArgumentNullException.ThrowIfNull(axes);
        return axes.Aggregate(1L, (count, axis) => Math.Min(int.MaxValue, count * axis.Values.Count));
    }

    /// <summary>Every combination of the values of some axes, the last axis fastest.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Combinations(IReadOnlyList<GridAxis> axes)
    {
        ArgumentNullException.ThrowIfNull(axes);
        IEnumerable<List<string>> all = [[]];
        foreach (var axis in axes)
        {
            all = all.SelectMany(row => axis.Values.Select(value => new List<string>(row) { value }));
        }

        return [.. all];
    }

    /// <summary>Quotes the cells.</summary>
    /// <param name="axes">What was varied.</param>
    /// <param name="briefs">The brief of each combination, in their order.</param>
    /// <param name="list">The prices.</param>
    /// <param name="grade">The stones' grade, or null.</param>
    /// <param name="isChecked">True to run every check on each cell too.</param>
    /// <param name="done">Told how many cells are done.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="ArgumentException">There is not one brief for each combination.</exception>
    public static QuoteGrid Run(
        IReadOnlyList<GridAxis> axes, IReadOnlyList<ResolvedBrief> briefs, PriceList list, string? grade, bool isChecked, IProgress<int>? done = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(briefs);
        var combinations = Combinations(axes);
        if (combinations.Count != briefs.Count)
        {
            throw new ArgumentException(FormattableString.Invariant($"{combinations.Count} combinations have {briefs.Count} briefs"), nameof(briefs));
        }

        var book = new VolumeBook();
        var cells = new GridCell[briefs.Count];
        var finished = 0;

        // One thread a cell: cells wait for nobody, parts of one cell would.
        Parallel.For(0, cells.Length, new ParallelOptions { CancellationToken = stop }, index =>
        {
            cells[index] = Cell(combinations[index], briefs[index], list, grade, isChecked, book, stop);
            done?.Report(Interlocked.Increment(ref finished));
        });
        return new QuoteGrid(axes, cells, book.Asked, book.Measured);
    }

    private static GridCell Cell(
        IReadOnlyList<string> values, ResolvedBrief brief, PriceList list, string? grade, bool isChecked, VolumeBook book, CancellationToken stop)
    {
        var design = LineDesign.Solve(brief);
        if (design.Chosen is null)
        {
            return new GridCell(values, false, [$"no line closes: {design.Refusal}"], null, null, null, null, null, null, null, null, null, null);
        }

        var piece = PartsBuilder.Build(design);
        var plan = CastingPlans.Of(piece, book, threads: 1, stop);
        var quote = Quotes.Of(QuoteBasis.Of(plan), list, grade);
        var findings = isChecked ? PieceChecks.Run(PieceModel.Of(piece, [.. piece.Parts.Select(part => Weighing.Mesh(part.AsSet, part.AsSet, stop))]), stop: stop) : [];
        var failures = findings.Where(finding => finding.Verdict == Verdict.Fail)
            .Select(finding => $"{finding.Rule}, {finding.Where}: {finding.Cure}").Distinct(StringComparer.Ordinal).ToList();
        decimal metal = quote.SumOf(QuoteGroup.Metal) + quote.SumOf(QuoteGroup.Casting), stones = quote.SumOf(QuoteGroup.Stones);
        return new GridCell(
            values, failures.Count == 0, [.. failures, .. quote.Missing.Select(missing => $"missing price: {missing.Path}: {missing.Needed}")],
            isChecked ? findings.Count(finding => finding.Verdict == Verdict.Caution) : null,
            quote.Basis.Links, quote.Basis.LaidFlatMm, quote.Basis.FinishedG, quote.Basis.Stones.SetCt,
            quote.Missing.Count == 0 ? metal : null, quote.Missing.Count == 0 ? stones : null, quote.Cost - metal - stones, quote.Cost, quote.Total);
    }
}
