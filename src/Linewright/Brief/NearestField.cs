using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>Finds the field that was probably meant when another name was written; units are what people leave out first.</summary>
internal static class NearestField
{
    private static readonly string[] Units = ["_mm", "_in", "_um", "_deg", "_percent"];

    /// <summary>The closest of the names, with or without its unit, or null where none is near.</summary>
    public static string? Of(string word, IReadOnlyList<string> names)
    {
        if (NearestName.Of(word, names) is { } near)
        {
            return near;
        }

        return NearestName.Of(word, names.Select(WithoutUnit)) is { } bare ? names.First(name => WithoutUnit(name) == bare) : null;
    }

    private static string WithoutUnit(string name)
        => Units.FirstOrDefault(unit => name.EndsWith(unit, StringComparison.Ordinal)) is { } unit ? name[..^unit.Length] : name;
}
