using System.Collections.Immutable;

namespace Linewright.Stones;

/// <summary>The proportions of a round brilliant: angles in degrees, lengths as shares of the girdle diameter unless said otherwise.</summary>
/// <param name="TableRatio">Table, corner to corner.</param>
/// <param name="CrownDeg">Slope of the bezel mains from the girdle plane.</param>
/// <param name="PavilionDeg">Slope of the pavilion mains from the girdle plane.</param>
/// <param name="StarRatio">How far the stars reach from the table's edge to the girdle, seen from above, 0 to 1.</param>
/// <param name="LowerHalfRatio">How far the lower halves reach from the girdle to the axis, seen from below, 0 to 1.</param>
/// <param name="GirdleRatio">Girdle thickness where the mains meet it, its thickest places.</param>
/// <param name="CuletRatio">Culet, flat to flat; 0 for a pointed stone.</param>
/// <param name="GirdleSides">How many flats stand for the round girdle: a multiple of 16, 64 reach 0.12 % past the true circle at their corners.</param>
/// <remarks>A plain value: nothing is refused here. <see cref="RoundBrilliant.Cut"/> says whether a stone comes of it, <see cref="Assess"/> whether a good one.</remarks>
public sealed record BrilliantProportions(
    double TableRatio,
    double CrownDeg,
    double PavilionDeg,
    double StarRatio,
    double LowerHalfRatio,
    double GirdleRatio,
    double CuletRatio = 0,
    int GirdleSides = 64)
{
    /// <summary>What most small stones are near: table 57 %, crown 34.5, pavilion 40.75, star 50 %, lower half 77 %, girdle 3.5 %, no culet.</summary>
    /// <remarks>Common practice, the middle of the good ranges.</remarks>
    public static BrilliantProportions Modern { get; } = new(0.57, 34.5, 40.75, 0.50, 0.77, 0.035);

    /// <summary>Tolkowsky's stone with a girdle of 3 %: he assumed a knife edge, which no setter can hold.</summary>
    /// <remarks>Source: Tolkowsky (1919), Diamond Design: table 53 %, crown 34.5, pavilion 40.75. From memory. Stars and lower halves are assumed, he fixed none.</remarks>
    public static BrilliantProportions Tolkowsky { get; } = new(0.53, 34.5, 40.75, 0.50, 0.75, 0.03);

    /// <summary>Bezel height over the girdle, as a share of the diameter.</summary>
    public double CrownHeightRatio => (1 - TableRatio) / 2 * Math.Tan(double.DegreesToRadians(CrownDeg));

    /// <summary>Pavilion depth from the girdle to the point that the mains would meet in, as a share of the diameter.</summary>
    public double PavilionDepthRatio => Math.Tan(double.DegreesToRadians(PavilionDeg)) / 2;

    /// <summary>Table to culet, as a share of the diameter.</summary>
    public double DepthRatio => CrownHeightRatio + GirdleRatio + PavilionDepthRatio * (1 - CuletRatio);

    /// <summary>Each proportion against what the trade calls good and what it still accepts.</summary>
    /// <remarks>
    /// Ranges from memory: GIA cut grading (2006), common practice for culet and depth. Crown height, pavilion
    /// depth and total depth are calculated from the others and judged again, as a grader would.
    /// </remarks>
    public ImmutableArray<ProportionGrade> Assess() =>
    [
        new("table", TableRatio, 0.53, 0.60, 0.50, 0.66),
        new("crown angle", CrownDeg, 33.5, 35.5, 31.5, 37.5),
        new("crown height", CrownHeightRatio, 0.14, 0.16, 0.12, 0.17),
        new("pavilion angle", PavilionDeg, 40.6, 41.4, 40.2, 42.0),
        new("pavilion depth", PavilionDepthRatio, 0.425, 0.436, 0.41, 0.445),
        new("girdle", GirdleRatio, 0.025, 0.045, 0.01, 0.06),
        new("total depth", DepthRatio, 0.59, 0.625, 0.57, 0.64),
        new("star length", StarRatio, 0.45, 0.65, 0.40, 0.70),
        new("lower half length", LowerHalfRatio, 0.70, 0.85, 0.65, 0.90),
        new("culet", CuletRatio, 0, 0.01, 0, 0.02),
    ];
}
