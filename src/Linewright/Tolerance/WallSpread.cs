namespace Linewright.Tolerance;

/// <summary>How one wall comes out over a lot, mm.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Feature">Name of the feature.</param>
/// <param name="Count">How many a piece has.</param>
/// <param name="NominalMm">As the wall check measured it.</param>
/// <param name="LimitMm">Least wall.</param>
/// <param name="SpreadMm">One standard deviation of one wall on its own.</param>
/// <param name="UnderEach">How many in a piece are under the limit, on average.</param>
/// <param name="NonePercent">Pieces in which none is under the limit, %.</param>
/// <param name="ThinnestMm">In 95 of 100 pieces the thinnest is at least this.</param>
/// <param name="ToDrawMm">Drawn so thick, 99 of 100 pieces have none under the limit.</param>
public sealed record WallSpread(
    string Part,
    string Feature,
    int Count,
    double NominalMm,
    double LimitMm,
    double SpreadMm,
    double UnderEach,
    double NonePercent,
    double ThinnestMm,
    double ToDrawMm);
