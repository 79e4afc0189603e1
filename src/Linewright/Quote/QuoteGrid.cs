namespace Linewright.Quote;

/// <summary>Alternatives side by side: every combination of the values asked for, each quoted as it would be alone.</summary>
/// <param name="Axes">What was varied, in the order asked for.</param>
/// <param name="Cells">Every combination; the last axis runs fastest.</param>
/// <param name="Solids">Solids that the cells asked for.</param>
/// <param name="Measured">Those that had to be measured; the others were the same to the last bit.</param>
public sealed record QuoteGrid(IReadOnlyList<GridAxis> Axes, IReadOnlyList<GridCell> Cells, int Solids, int Measured)
{
    /// <summary>The cheapest cell that can be made and has a price; null where there is none.</summary>
    public GridCell? Cheapest() => Cells.Where(cell => cell is { CanBeMade: true, Total: not null }).MinBy(cell => cell.Total);
}
