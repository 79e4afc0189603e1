namespace Linewright.Brief;

/// <summary>How long the piece is: either laid flat, or a wrist with its ease. Inches have become millimetres.</summary>
/// <param name="LaidFlatMm">Closed, taut and laid flat, through the hinge axes, clasp included; null where the wrist is given.</param>
/// <param name="WristMm">Girth of the wrist; null where the length is given.</param>
/// <param name="EaseMm">Inside circumference less girth; null where the length is given.</param>
public sealed record LengthBrief(double? LaidFlatMm, double? WristMm, double? EaseMm);
