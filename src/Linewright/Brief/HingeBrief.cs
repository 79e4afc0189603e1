namespace Linewright.Brief;

/// <summary>How one link turns on the next. A null measure is left to the parts to derive.</summary>
/// <param name="Kind">How the hinge is built.</param>
/// <param name="BarMm">Diameter of the bar or the pin.</param>
/// <param name="EyeWallMm">Wall of the eye around its hole.</param>
/// <param name="EyeWidthMm">Width of the eye along the bar.</param>
/// <param name="CheekMm">Thickness of a cheek beside the eye.</param>
/// <param name="DiametralClearanceMm">Hole less bar, on the diameter.</param>
/// <param name="SideClearanceMm">Between the eye and a cheek, a side.</param>
/// <param name="ReliefMm">Around the eye's sweep where the neighbour makes way for it.</param>
/// <param name="OutwardStopDeg">Where metal stops the line from bending backwards, degrees.</param>
public sealed record HingeBrief(
    HingeKind Kind,
    double? BarMm,
    double? EyeWallMm,
    double? EyeWidthMm,
    double? CheekMm,
    double? DiametralClearanceMm,
    double SideClearanceMm,
    double ReliefMm,
    double OutwardStopDeg);
