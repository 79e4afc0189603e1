using System.Text.Json.Serialization;

namespace Linewright.Casting;

/// <summary>The sprue of one kind of part. mm; the place in the part's frame.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Count">How many the piece has.</param>
/// <param name="At">x, y, z of the gate's middle; null where no face will do.</param>
/// <param name="Outward">x, y, z of the way from the part into the sprue.</param>
/// <param name="SprueMm">Diameter of the sprue.</param>
/// <param name="GateMm">Diameter at the part.</param>
/// <param name="LengthMm">From the gate to the stem.</param>
/// <param name="ThickestMm">Largest ball in the part.</param>
/// <param name="ModulusMm">Volume over surface of the part.</param>
/// <param name="FeedRatio">Modulus of the gate over that of the part; 1.1 feeds.</param>
/// <param name="FreezesAfter">How much longer the gate takes to freeze than the part: the square of that.</param>
public sealed record SprueReport(
    string Part,
    int Count,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] IReadOnlyList<double>? At,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] IReadOnlyList<double>? Outward,
    double SprueMm,
    double GateMm,
    double LengthMm,
    double ThickestMm,
    double ModulusMm,
    double FeedRatio,
    double FreezesAfter);
