namespace Linewright.Files;

/// <summary>One cell of a workbook: text, a number, or a formula with the value that it had when it was written.</summary>
/// <param name="Text">Text, or null.</param>
/// <param name="Number">Number, or the formula's value; null where the cell is text or empty.</param>
/// <param name="Formula">Formula in the notation of cells, A2*B2; null where there is none.</param>
/// <param name="Format">How a number is shown.</param>
/// <param name="IsStrong">True for bold.</param>
public sealed record SheetCell(string? Text, decimal? Number, string? Formula, CellFormat Format, bool IsStrong = false)
{
    /// <summary>A cell with nothing in it.</summary>
    public static SheetCell Empty { get; } = new(null, null, null, CellFormat.General);

    /// <summary>Text, or an empty cell. It stays text, whatever it begins with.</summary>
    public static SheetCell Of(string? text, bool isStrong = false) => new(text, null, null, CellFormat.General, isStrong);

    /// <summary>A number, or an empty cell.</summary>
    public static SheetCell Of(decimal? number, CellFormat format, bool isStrong = false) => new(null, number, null, format, isStrong);

    /// <summary>A formula and its value.</summary>
    public static SheetCell Of(string formula, decimal? value, CellFormat format, bool isStrong = false) => new(null, value, formula, format, isStrong);
}
