namespace Linewright.Quote;

/// <summary>One combination of a grid, with its figures or with the reason why there are none.</summary>
/// <param name="Values">One of each axis, in the order of the axes.</param>
/// <param name="CanBeMade">True where a line closes and no check of it fails.</param>
/// <param name="Reasons">Why it cannot be made, or what its price list lacks; empty where all is well.</param>
/// <param name="Cautions">How many checks ask for caution; null where the cell was not checked.</param>
/// <param name="Links">Stone-set links.</param>
/// <param name="LaidFlatMm">Length, closed and taut.</param>
/// <param name="FinishedG">Metal of the finished piece.</param>
/// <param name="StonesCt">Stones to be set.</param>
/// <param name="MetalCost">Metal and casting, unrounded.</param>
/// <param name="StonesCost">Stones, unrounded.</param>
/// <param name="WorkCost">Everything else before markup, unrounded.</param>
/// <param name="Cost">All of it, unrounded; null where a price is missing.</param>
/// <param name="Total">With markup and tax, rounded once; null where a price is missing or no line closes.</param>
public sealed record GridCell(
    IReadOnlyList<string> Values,
    bool CanBeMade,
    IReadOnlyList<string> Reasons,
    int? Cautions,
    int? Links,
    double? LaidFlatMm,
    decimal? FinishedG,
    decimal? StonesCt,
    decimal? MetalCost,
    decimal? StonesCost,
    decimal? WorkCost,
    decimal? Cost,
    decimal? Total);
