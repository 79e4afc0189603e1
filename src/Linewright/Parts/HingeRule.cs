using Linewright.Brief;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>What a joint must bear and how little it may wag: the joint is drawn for both, and the checks hold it to them.</summary>
internal static class HingeRule
{
    /// <summary>Pull along the line that bar, eye and cheeks bear before they keep a set, N. Common practice.</summary>
    public const double PullN = 50;

    /// <summary>Sideways bend and twist by play alone that feel firm at most, degrees. Common practice: 1 to 3.</summary>
    public const double FirmDeg = 3;

    // Solids wag a little more than the formula says, since rims are rounded; a narrow pinned eye has more of it. Felt on solids
    // of 1.5 to 4 mm stones: up to 1.02 and 1.09.
    private const double Spare = 1.03, PinnedSpare = 1.1;

    /// <summary>The narrowest eye that wags no more than it may, mm: it tips on its bar by the clearance over its width. To 0.01 up.</summary>
    /// <param name="diametralClearanceMm">Hole less bar.</param>
    /// <param name="kind">Eye over bar, or pinned.</param>
    public static double FirmWidthMm(double diametralClearanceMm, HingeKind kind)
        => RoundUp((kind == HingeKind.PinnedKnuckles ? PinnedSpare : Spare) * diametralClearanceMm / Math.Tan(double.DegreesToRadians(FirmDeg)));

    /// <summary>The thinnest round bar that bears the pull in the middle between two cheeks, mm: F L d / 8 I = yield. To 0.01 up.</summary>
    /// <remarks>Source: Young and Budynas, Roark's Formulas for Stress and Strain, bar on two supports; cast-on ends only help.</remarks>
    /// <param name="spanMm">From cheek to cheek.</param>
    /// <param name="yieldMPa">0.2 % yield of the bar.</param>
    public static double StrongBarMm(double spanMm, double yieldMPa)
        => RoundUp(Math.Cbrt(8 * PullN * Guard.Positive(spanMm) / (Math.PI * Guard.Positive(yieldMPa))));

    private static double RoundUp(double mm) => Math.Ceiling(mm * 100 - 1e-9) / 100;
}
