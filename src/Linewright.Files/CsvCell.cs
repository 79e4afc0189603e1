using System.Globalization;

namespace Linewright.Files;

/// <summary>One field of a CSV row: text as it is, or a number written the same way in every country.</summary>
/// <param name="Text">What the field says, before any quoting.</param>
public readonly record struct CsvCell(string Text)
{
    /// <summary>Text; null becomes an empty field.</summary>
    public static implicit operator CsvCell(string? text) => FromText(text);

    /// <summary>A whole number.</summary>
    public static implicit operator CsvCell(int number) => FromNumber(number);

    /// <summary>The shortest decimal that reads back to the same number.</summary>
    public static implicit operator CsvCell(double number) => FromNumber(number);

    /// <summary>A decimal with all the digits that it carries: 12.50 stays 12.50.</summary>
    public static implicit operator CsvCell(decimal number) => FromNumber(number);

    /// <inheritdoc cref="op_Implicit(string?)"/>
    public static CsvCell FromText(string? text) => new(text ?? string.Empty);

    /// <summary>A number in digits, minus sign and decimal point, whatever the culture.</summary>
    public static CsvCell FromNumber<T>(T number)
        where T : IFormattable
        => new(number.ToString(null, CultureInfo.InvariantCulture));
}
