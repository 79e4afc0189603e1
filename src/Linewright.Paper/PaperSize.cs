namespace Linewright.Paper;

/// <summary>A trimmed sheet, mm.</summary>
/// <param name="Name">What the trade calls it.</param>
/// <param name="WidthMm">Left to right.</param>
/// <param name="HeightMm">Top to bottom.</param>
public sealed record PaperSize(string Name, double WidthMm, double HeightMm)
{
    /// <summary>Upright A4. Standard: ISO 216.</summary>
    public static PaperSize A4 { get; } = new("A4", 210, 297);

    /// <summary>Upright letter, 8 1/2 by 11 inches. Standard: ANSI/ASME Y14.1, size A.</summary>
    public static PaperSize Letter { get; } = new("Letter", 215.9, 279.4);

    /// <summary>The same sheet with its long side across.</summary>
    public PaperSize Landscape => WidthMm >= HeightMm ? this : new PaperSize(Name, HeightMm, WidthMm);

    /// <summary>The whole sheet as a box.</summary>
    public PaperBox Box => new(0, 0, WidthMm, HeightMm);
}
