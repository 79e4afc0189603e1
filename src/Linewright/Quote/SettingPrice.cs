using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>A row of the price list: setting one stone.</summary>
/// <param name="Path">Where it stands in the list: setting[1].</param>
/// <param name="Setting">How the stone is held: claw.</param>
/// <param name="FromMm">Smallest diameter; it belongs to the band.</param>
/// <param name="ToMm">Where the next band begins.</param>
/// <param name="Family">Only in metal of this family; null for any.</param>
/// <param name="Each">For a stone.</param>
public sealed record SettingPrice(string Path, string Setting, decimal FromMm, decimal ToMm, MetalFamily? Family, decimal Each)
{
    /// <summary>True where a stone of this diameter belongs to the band.</summary>
    public bool Holds(decimal diameterMm) => diameterMm >= FromMm && diameterMm < ToMm;
}
