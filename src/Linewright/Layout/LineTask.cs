namespace Linewright.Layout;

/// <summary>What the layout has to solve: a length to fill with links of one stone and a clasp.</summary>
/// <param name="StoneDiameterMm">Room a stone takes along the line, above 0.</param>
/// <param name="LaidFlatMm">Length closed, taut, through the hinge axes, clasp included. Not read when planning for a wrist.</param>
/// <param name="GapPreferredMm">Between neighbouring girdles, taut; within the two limits.</param>
/// <param name="GapMinMm">Smallest gap, 0 or more.</param>
/// <param name="GapMaxMm">Largest gap.</param>
/// <param name="ClaspMinMm">Shortest clasp that works, hinge axis to hinge axis, above 0.</param>
/// <param name="ClaspIdealMm">The clasp length to come near to; within the two limits.</param>
/// <param name="ClaspMaxMm">Longest clasp.</param>
/// <param name="HingeHeightMm">Hinge axes over the skin, 0 or more.</param>
/// <param name="PlayMm">Radial play of a hinge: half of eye inside less bar diameter, 0 or more.</param>
/// <param name="StoneCt">Weight of one stone, carats, 0 or more.</param>
public sealed record LineTask(
    double StoneDiameterMm,
    double LaidFlatMm,
    double GapPreferredMm,
    double GapMinMm,
    double GapMaxMm,
    double ClaspMinMm,
    double ClaspIdealMm,
    double ClaspMaxMm,
    double HingeHeightMm,
    double PlayMm,
    double StoneCt)
{
    /// <summary>Shortest length that a refusal may advise, in the measure that is asked for: laid flat, or inside.</summary>
    public double ShortestAskedMm { get; init; }

    /// <summary>Longest length that a refusal may advise.</summary>
    public double LongestAskedMm { get; init; } = double.PositiveInfinity;
}
