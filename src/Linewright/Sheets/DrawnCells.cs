namespace Linewright.Sheets;

/// <summary>Views that share a page.</summary>
/// <param name="Title">What they show, for the title block.</param>
/// <param name="At">The views by row and column, drawn at a scale; null is an empty cell.</param>
internal sealed record DrawnCells(string Title, Func<SheetScale, Block?[,]> At);
