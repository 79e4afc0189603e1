namespace Linewright.Files;

/// <summary>How a number in a workbook is shown; the number itself is kept whole.</summary>
public enum CellFormat
{
    /// <summary>As the program that opens it likes; for text.</summary>
    General,

    /// <summary>1,234.</summary>
    Whole,

    /// <summary>1,234.50: sums of money.</summary>
    TwoDecimals,

    /// <summary>1.2345: unit prices, weights of small things.</summary>
    FourDecimals,
}
