namespace Linewright.Quote;

/// <summary>A value as it stands in a price list, with its place; already known to fit its field.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, in characters.</param>
internal sealed record PriceNode(int Line, int Column)
{
    /// <summary>Of a text, a day or a choice.</summary>
    public string? Text { get; init; }

    /// <summary>Of a number.</summary>
    public decimal? Number { get; init; }

    /// <summary>Of a group, by name.</summary>
    public Dictionary<string, PriceNode> Fields { get; } = new(StringComparer.Ordinal);

    /// <summary>Of a list, in the file's order.</summary>
    public List<PriceNode> Rows { get; } = [];

    /// <summary>The text of a field, null where it is not there.</summary>
    public string? TextAt(string name) => Fields.GetValueOrDefault(name)?.Text;

    /// <summary>The number of a field, null where it is not there.</summary>
    public decimal? NumberAt(string name) => Fields.GetValueOrDefault(name)?.Number;

    /// <summary>A group or list, null where it is not there.</summary>
    public PriceNode? At(string name) => Fields.GetValueOrDefault(name);
}
