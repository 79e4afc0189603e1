using System.Collections.Immutable;

namespace Linewright.Brief;

/// <summary>The brief as the designer wrote it: only what was asked for, each value already known to be in its range.</summary>
/// <remarks>Comes from <see cref="BriefReader"/>; <see cref="BriefDefaults"/> fills in the rest.</remarks>
public sealed class DesignBrief
{
    internal DesignBrief(ImmutableSortedDictionary<string, BriefValue> values) => Values = values;

    /// <summary>What was written, by the path of the field.</summary>
    public ImmutableSortedDictionary<string, BriefValue> Values { get; }

    /// <summary>True where the brief says something about a field.</summary>
    public bool Has(string path) => Values.ContainsKey(path);

    /// <summary>The number that was written, or the field's constant default, or null.</summary>
    public double? Number(string path) => Values.GetValueOrDefault(path)?.Number ?? BriefFields.At(path)?.DefaultNumber;

    /// <summary>The text or word that was written, or the field's default, or null.</summary>
    public string? Text(string path) => Values.GetValueOrDefault(path)?.Text ?? BriefFields.At(path)?.DefaultChoice;

    /// <summary>The flag that was written, or the field's default, or null.</summary>
    public bool? Flag(string path) => Values.GetValueOrDefault(path)?.Flag ?? BriefFields.At(path)?.DefaultFlag;
}
