using System.Globalization;

namespace Linewright.Brief;

/// <summary>One field of the brief: what may be written there, and what holds where nothing is.</summary>
/// <remarks>The reader's range checks, its messages and the schema all come from these rows and from nowhere else.</remarks>
public sealed record BriefField
{
    /// <summary>Group and name, stone.diameter_mm; a field outside the groups has its bare name.</summary>
    public required string Path { get; init; }

    /// <summary>What it holds.</summary>
    public required FieldKind Kind { get; init; }

    /// <summary>One sentence for the designer.</summary>
    public required string Help { get; init; }

    /// <summary>True where a brief without it cannot be understood.</summary>
    public bool IsRequired { get; init; }

    /// <summary>mm, in, %, deg, um; empty where the field has none.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Lowest number that may stand there.</summary>
    public double Low { get; init; }

    /// <summary>Highest number that may stand there.</summary>
    public double High { get; init; }

    /// <summary>The number must be a whole multiple of this; 0 where any number will do.</summary>
    public double Step { get; init; }

    /// <summary>Longest text that may stand there, in characters.</summary>
    public int LongestText { get; init; } = 80;

    /// <summary>The words that may stand in a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>A choice to show in messages: its default, or the one named here.</summary>
    public string Example { get => field ?? DefaultChoice ?? Choices[0]; init; }

    /// <summary>The number that holds where none is written; null where it is derived or required.</summary>
    public double? DefaultNumber { get; init; }

    /// <summary>The word that holds where none is written.</summary>
    public string? DefaultChoice { get; init; }

    /// <summary>The flag that holds where none is written.</summary>
    public bool? DefaultFlag { get; init; }

    /// <summary>How the value is found where none is written and no constant holds: 0.30 + 0.05 x stone diameter.</summary>
    public string? DefaultRule { get; init; }

    /// <summary>The group, empty outside the groups.</summary>
    public string Group => Path.Contains('.', StringComparison.Ordinal) ? Path[..Path.IndexOf('.', StringComparison.Ordinal)] : "";

    /// <summary>The name within the group.</summary>
    public string Name => Path[(Path.IndexOf('.', StringComparison.Ordinal) + 1)..];

    /// <summary>The default in words, empty where the field is required or simply absent.</summary>
    public string DefaultText => this switch
    {
        { DefaultNumber: { } number } => Format(number),
        { DefaultChoice: { } word } => word,
        { DefaultFlag: { } flag } => flag ? "true" : "false",
        _ => DefaultRule ?? "",
    };

    /// <summary>What may stand here, in words: a number from 1.2 to 8 mm.</summary>
    public string Expected => Kind switch
    {
        FieldKind.Text => string.Create(CultureInfo.InvariantCulture, $"text of 1 to {LongestText} characters"),
        FieldKind.Flag => "true or false",
        FieldKind.Choice => Choices.Count <= 6 ? "one of " + string.Join(", ", Choices) : string.Create(CultureInfo.InvariantCulture, $"one of {Choices.Count} names, such as {Example}"),
        _ => (Step > 0 ? $"a whole multiple of {Format(Step)}" : "a number") + $" from {Format(Low)} to {Format(High)}" + (Unit.Length > 0 ? " " + Unit : ""),
    };

    internal static string Format(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);
}
