using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The gap that two square ends need so that a hinge between them can turn, and the turn that a gap allows.</summary>
/// <remarks>
/// The corners furthest from the axis on the closing side meet first: gap = 2 h tan(angle / 2), h their distance from
/// the axis, mm. For first thoughts; what really meets is measured on the solids.
/// </remarks>
public static class BendRelief
{
    /// <summary>Gap needed at rest for an angle in radians, 0 to below pi, mm.</summary>
    public static double GapMm(double reachMm, double angle)
        => 2 * Guard.Positive(reachMm) * Math.Tan(Guard.InRange(angle, 0, 3.1) / 2);

    /// <summary>Angle that a gap allows, radians.</summary>
    public static double Angle(double reachMm, double gapMm)
        => 2 * Math.Atan2(Guard.InRange(gapMm, 0, 1e3) / 2, Guard.Positive(reachMm));
}
