namespace Linewright.Quote;

/// <summary>A row of the price list: stones of one species and grade in a band of sizes. It has a price per carat or one for each.</summary>
/// <param name="Path">Where it stands in the list: stones[3].</param>
/// <param name="Species">Key of the species.</param>
/// <param name="Grade">As the shop sorts.</param>
/// <param name="FromMm">Smallest diameter; it belongs to the band.</param>
/// <param name="ToMm">Where the next band begins.</param>
/// <param name="PerCt">Price of a carat, or null.</param>
/// <param name="Each">Price of a stone, or null.</param>
public sealed record StonePrice(string Path, string Species, string Grade, decimal FromMm, decimal ToMm, decimal? PerCt, decimal? Each)
{
    /// <summary>True where a stone of this diameter belongs to the band.</summary>
    public bool Holds(decimal diameterMm) => diameterMm >= FromMm && diameterMm < ToMm;
}
