namespace Linewright.Brief;

/// <summary>The stones: cut, kind, size and proportions. Slopes in degrees from the girdle plane.</summary>
public sealed record StoneBrief(
    StoneCut Cut,
    string Species,
    double DiameterMm,
    double TablePercent,
    double CrownDeg,
    double PavilionDeg,
    double StarPercent,
    double LowerHalfPercent,
    double GirdlePercent,
    int GirdleFacets,
    double CuletPercent);
