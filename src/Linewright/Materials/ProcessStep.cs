using System.Text.Json.Serialization;

namespace Linewright.Materials;

/// <summary>One step between the drawing and the finished part: how it scales, what it takes from a face and how far it scatters.</summary>
/// <remarks>
/// Losses are mm taken squarely from a face of each kind. Spreads are one standard deviation: that of the scale is shared by all
/// that goes through the step together (a plate, a tree), that of a loss and that of a face belong to one face of one part, and a common
/// face spread moves every face of a tree by the same amount, outwards or inwards.
/// </remarks>
/// <param name="Key">Name in a route.</param>
/// <param name="Name">In the trade's words.</param>
/// <param name="ShrinkPercent">Linear shrinkage; null in the one step where the metal's family decides.</param>
/// <param name="PatternDensityGPerCm3">Of the resin or wax that the step leaves; null where it leaves metal.</param>
/// <param name="ScaleSpreadPercent">Spread of the scale, % of a length.</param>
/// <param name="PolishedLossMm">Taken from a polished face.</param>
/// <param name="KeptLossMm">Taken from a kept face.</param>
/// <param name="LossSpreadMm">Spread of what is taken from a polished face.</param>
/// <param name="FaceSpreadMm">Spread of where a face comes to lie.</param>
/// <param name="CommonFaceSpreadMm">Spread of where all faces of a tree come to lie together.</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Mark">One of <see cref="Marks"/>.</param>
public sealed record ProcessStep(
    string Key,
    string Name,
    double ScaleSpreadPercent,
    double PolishedLossMm,
    double KeptLossMm,
    double LossSpreadMm,
    double FaceSpreadMm,
    double CommonFaceSpreadMm,
    string Source,
    string Mark,
    double? ShrinkPercent = null,
    [property: JsonPropertyName("pattern_density_g_per_cm3")] double? PatternDensityGPerCm3 = null) : IMaterialRow
{
    /// <summary>What is taken from a face of a kind, mm.</summary>
    public double LossMm(FaceKind face) => face == FaceKind.Polished ? PolishedLossMm : KeptLossMm;
}
