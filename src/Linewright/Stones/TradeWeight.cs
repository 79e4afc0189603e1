using Linewright.Solids.Space;

namespace Linewright.Stones;

/// <summary>Stone weights as the trade estimates them from a gauge, in carats.</summary>
public static class TradeWeight
{
    /// <summary>Carats per mm3 of a round brilliant of diamond, applied to diameter squared times depth.</summary>
    /// <remarks>Source: published weight-formula sheets for dealers and appraisers.</remarks>
    public const double RoundFactor = 0.0061;

    /// <summary>The specific gravity that the factor is made for.</summary>
    /// <remarks>Source: published weight-formula sheets; usual figure for diamond.</remarks>
    public const double DiamondGravity = 3.52;

    /// <summary>Estimated weight of a round brilliant. Reads 1 to 5 % off for shallow or deep stones and thick girdles.</summary>
    /// <param name="diameterMm">Mean girdle diameter.</param>
    /// <param name="depthMm">Table to culet.</param>
    /// <param name="specificGravity">Of the species; common practice scales the diamond formula by it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above zero.</exception>
    public static double RoundCt(double diameterMm, double depthMm, double specificGravity)
        => Guard.Positive(diameterMm) * diameterMm * Guard.Positive(depthMm) * RoundFactor * Guard.Positive(specificGravity) / DiamondGravity;
}
