namespace Linewright.Layout;

/// <summary>One way to fill the length exactly.</summary>
/// <param name="Count">Stone-set links.</param>
/// <param name="PitchMm">Between neighbouring stone axes, taut.</param>
/// <param name="GapMm">Between neighbouring girdles, taut.</param>
/// <param name="ClaspMm">Hinge axis to hinge axis.</param>
/// <param name="LaidFlatMm">Count times pitch plus clasp.</param>
/// <param name="StretchMm">Pitch less the preferred pitch: above 0 where opened, below 0 where tightened, exactly 0 where kept.</param>
/// <param name="Fit">On a round wrist.</param>
/// <param name="PlayTotalMm">How much shorter the line gets with every hinge pushed together: two radial plays for each of Count + 1 hinges.</param>
/// <param name="StonesCt">Weight of all stones, carats.</param>
/// <param name="Reason">Why it is where it is in the ranking, one sentence for a designer.</param>
public sealed record LineCandidate(
    int Count,
    double PitchMm,
    double GapMm,
    double ClaspMm,
    double LaidFlatMm,
    double StretchMm,
    RoundFit Fit,
    double PlayTotalMm,
    double StonesCt,
    string Reason)
{
    /// <summary>True where the preferred gap was kept.</summary>
    public bool KeepsPreferredGap => StretchMm == 0;

    /// <summary>The line as rigid pieces between hinge axes.</summary>
    public HingeChain Chain => new(Count, PitchMm, ClaspMm, Fit.HingeHeightMm);
}
