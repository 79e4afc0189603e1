using Linewright.Solids.Outlines;

namespace Linewright.Files;

/// <summary>Lines of a DXF file that belong together.</summary>
/// <param name="Name">Upper case letters, digits and _ only: all that release 12 allows, and at most 31 of them.</param>
/// <param name="IsDashed">Whether its lines are broken: edges behind others.</param>
/// <param name="Lines">Each two points or more, mm.</param>
public sealed record DxfLayer(string Name, bool IsDashed, IReadOnlyList<IReadOnlyList<FlatPoint>> Lines)
{
    private const int LongestName = 31;

    /// <summary>Its lettering.</summary>
    public IReadOnlyList<DxfText> Texts { get; init; } = [];

    /// <summary>Upper case letters, digits and _ only.</summary>
    public string Name { get; } = Name.Length is > 0 and <= LongestName && Name.All(c => c is (>= 'A' and <= 'Z') or (>= '0' and <= '9') or '_')
        ? Name
        : throw new ArgumentException($"a layer's name is 1 to 31 upper case letters, digits and _; read '{Name}'", nameof(Name));
}
