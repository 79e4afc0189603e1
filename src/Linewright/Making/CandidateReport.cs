namespace Linewright.Making;

/// <summary>One layout that closes at the length asked for.</summary>
/// <param name="Count">Stone-set links.</param>
/// <param name="PitchMm">Distance between neighbouring stone axes, taut.</param>
/// <param name="StoneGapMm">Between neighbouring girdles, taut.</param>
/// <param name="ClaspMm">Closed clasp, hinge axis to hinge axis.</param>
/// <param name="TotalCt">All stones together.</param>
/// <param name="InsideCircumferenceMm">What a round wrist feels.</param>
/// <param name="HingeAngleDeg">Between two links on that wrist.</param>
/// <param name="Reason">Why it stands where it stands, in a sentence.</param>
public sealed record CandidateReport(
    int Count,
    double PitchMm,
    double StoneGapMm,
    double ClaspMm,
    double TotalCt,
    double InsideCircumferenceMm,
    double HingeAngleDeg,
    string Reason);
