using System.Diagnostics.CodeAnalysis;

namespace Linewright.Materials;

/// <summary>The rows of one data file, in the file's order, found by key.</summary>
public sealed class MaterialTable<TRow>
    where TRow : IMaterialRow
{
    private readonly string noun;
    private readonly Dictionary<string, TRow> byKey;

    internal MaterialTable(string noun, IReadOnlyList<TRow> rows)
    {
        this.noun = noun;
        All = rows;
        Keys = [.. rows.Select(row => row.Key)];
        byKey = rows.ToDictionary(row => row.Key, StringComparer.Ordinal);
    }

    /// <summary>Every row, in the order of the data file.</summary>
    public IReadOnlyList<TRow> All { get; }

    /// <summary>Every key, in the order of the data file.</summary>
    public IReadOnlyList<string> Keys { get; }

    /// <summary>The row with this key.</summary>
    /// <exception cref="ArgumentException">There is none; the message names the nearest key.</exception>
    public TRow Find(string key) => byKey.TryGetValue(key, out var row)
        ? row
        : throw new ArgumentException(
            $"There is no {noun} '{key}'" + (Nearest(key) is { } near ? $"; did you mean '{near}'?" : "."), nameof(key));

    /// <summary>True, and the row, where there is one with this key.</summary>
    public bool TryFind(string key, [MaybeNullWhen(false)] out TRow row) => byKey.TryGetValue(key, out row);

    /// <summary>The key that was probably meant, null where none is near.</summary>
    public string? Nearest(string key) => NearestName.Of(key, Keys);
}
