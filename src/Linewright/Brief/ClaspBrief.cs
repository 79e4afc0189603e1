using Linewright.Materials;

namespace Linewright.Brief;

/// <summary>The clasp. A null measure is left to the layout to derive.</summary>
/// <param name="Kind">How the line closes.</param>
/// <param name="LengthMinMm">Shortest clasp that the layout may choose, closed and taut, from the axis of the box's bar to the axis of the tongue's eye; never under what the tongue needs.</param>
/// <param name="LengthMaxMm">Longest clasp that the layout may choose, measured in the same way.</param>
/// <param name="WallMm">Wall of the box, finished.</param>
/// <param name="TongueMm">Thickness of the tongue's strip.</param>
/// <param name="PressMm">How far the tongue is pressed to release it.</param>
/// <param name="SidePlayMm">Between the tongue and the box, a side.</param>
/// <param name="WidthRatio">Width of the clasp over the width of the line.</param>
/// <param name="Temper">State of the tongue.</param>
/// <param name="Safety">True where a figure-of-eight wire locks it a second time.</param>
public sealed record ClaspBrief(
    ClaspKind Kind,
    double? LengthMinMm,
    double? LengthMaxMm,
    double WallMm,
    double? TongueMm,
    double PressMm,
    double SidePlayMm,
    double WidthRatio,
    Temper Temper,
    bool Safety);
