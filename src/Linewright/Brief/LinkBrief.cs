namespace Linewright.Brief;

/// <summary>The link's own measures.</summary>
/// <param name="StoneGapMm">Preferred gap between two girdles.</param>
/// <param name="StoneGapMinMm">Smallest gap that the layout may choose.</param>
/// <param name="StoneGapMaxMm">Largest gap that the layout may choose.</param>
/// <param name="RailMm">Section of the rails; null is left to the parts to derive.</param>
/// <param name="OpeningPercent">Opening under the stone over its diameter.</param>
/// <param name="EdgeRadiusMm">Radius of outer edges.</param>
/// <param name="FilletMm">Fillet in inside corners.</param>
public sealed record LinkBrief(
    double StoneGapMm,
    double StoneGapMinMm,
    double StoneGapMaxMm,
    double? RailMm,
    double OpeningPercent,
    double EdgeRadiusMm,
    double FilletMm);
