using System.Globalization;

namespace Linewright.Quote;

/// <summary>One field of a price list: what may stand there. Reader, messages and schema come from these rows and nowhere else.</summary>
/// <param name="Name">The field's name.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Help">One sentence for the shop.</param>
internal sealed record PriceField(string Name, PriceKind Kind, string Help)
{
    /// <summary>True where the file, or a row with it missing, cannot be understood.</summary>
    public bool IsRequired { get; init; }

    /// <summary>Lowest number.</summary>
    public decimal Low { get; init; }

    /// <summary>Highest number.</summary>
    public decimal High { get; init; }

    /// <summary>Words of a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>Fields of a group, or of each row of a list.</summary>
    public IReadOnlyList<PriceField> Fields { get; init; } = [];

    /// <summary>A value to show in a message.</summary>
    public string Example { get; init; } = "";

    /// <summary>The same field, which must be there.</summary>
    public PriceField Required() => this with { IsRequired = true };

    /// <summary>What may stand here, in words.</summary>
    public string Expected => Kind switch
    {
        PriceKind.Text => "text of 1 to 200 characters",
        PriceKind.Day => "a day as 2026-03-02",
        PriceKind.Choice => Choices.Count <= 8 ? "one of " + string.Join(", ", Choices) : string.Create(CultureInfo.InvariantCulture, $"one of {Choices.Count} names, such as {Example}"),
        PriceKind.Number => string.Create(CultureInfo.InvariantCulture, $"a number from {Low:0.####} to {High:0.####}"),
        PriceKind.List => "a list of rows in brackets",
        _ => "a group in braces",
    };
}
