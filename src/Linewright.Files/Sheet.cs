namespace Linewright.Files;

/// <summary>One sheet of a workbook: a heading that stays in sight, and rows under it. The first row of cells is row 2.</summary>
/// <param name="Name">On its tab; at most 31 characters, none of : \ / ? * [ ].</param>
/// <param name="Columns">From left to right.</param>
/// <param name="Rows">Each at most as wide as the columns.</param>
public sealed record Sheet(string Name, IReadOnlyList<SheetColumn> Columns, IReadOnlyList<IReadOnlyList<SheetCell>> Rows);
