namespace Linewright.Making;

/// <summary>The chosen layout of the line.</summary>
/// <param name="Count">Stone-set links.</param>
/// <param name="PitchMm">Distance between neighbouring stone axes, taut.</param>
/// <param name="StoneGapMm">Between neighbouring girdles, taut.</param>
/// <param name="ClaspMm">Closed clasp, hinge axis to hinge axis.</param>
/// <param name="LaidFlatMm">Closed, taut, laid flat: count x pitch + clasp.</param>
/// <param name="InsideCircumferenceMm">What a round wrist feels.</param>
/// <param name="WristRadiusMm">Radius of that wrist.</param>
/// <param name="HingeHeightMm">Hinge axis over the skin.</param>
/// <param name="HingeAngleDeg">Between two links on that wrist.</param>
/// <param name="PlayMm">How much the pitch can shorten.</param>
/// <param name="Candidates">Every layout that closes, best first; the first is the chosen one.</param>
public sealed record LayoutReport(
    int Count,
    double PitchMm,
    double StoneGapMm,
    double ClaspMm,
    double LaidFlatMm,
    double InsideCircumferenceMm,
    double WristRadiusMm,
    double HingeHeightMm,
    double HingeAngleDeg,
    double PlayMm,
    IReadOnlyList<CandidateReport> Candidates);
