namespace Linewright.Tolerance;

/// <summary>The hinge gaps with which so many pieces run free without a file.</summary>
/// <remarks>
/// Each of the two gaps is solved so that its share of the pieces is the root of what is wanted: both together then give what is
/// wanted, since bore and sides scatter on their own. Solved on the lot; the closed form stands beside it.
/// </remarks>
/// <param name="WantedPercent">Pieces that should run free.</param>
/// <param name="DiametralClearanceMm">For hinge.diametral_clearance_mm, from the lot.</param>
/// <param name="DiametralClosedFormMm">The same by the normal law.</param>
/// <param name="SideClearanceMm">For hinge.side_clearance_mm, a side, from the lot.</param>
/// <param name="SideClosedFormMm">The same by integral over what a tree shares; for a line on one tree.</param>
/// <param name="Together">Pieces of the same lot that run free with both.</param>
public sealed record HingeGap(
    double WantedPercent,
    Quantile DiametralClearanceMm,
    double DiametralClosedFormMm,
    Quantile SideClearanceMm,
    double? SideClosedFormMm,
    Chance Together);
