using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>How slowly a body of metal freezes: its volume over the surface that cools it, mm.</summary>
/// <remarks>
/// Chvorinov's rule: the time to freeze goes with the square of that ratio, t = C (V / A)^2, C by metal, mould and heat. Bodies of one tree
/// share C, so their moduli alone say which freezes first. Source: Chvorinov (1940), Theorie der Erstarrung von Gussstuecken, Die Giesserei
/// 27, 177. From memory. It knows nothing of corners, cores that are hot from three sides, or of how the metal ran.
/// </remarks>
public static class Modulus
{
    /// <summary>A feed must have this much more than what it feeds, to freeze after it. Common practice of foundries: 1.1 to 1.2.</summary>
    public const double FeedRatio = 1.1;

    /// <summary>Of a body with a volume in mm3 and a cooling surface in mm2.</summary>
    public static double Of(double volumeMm3, double areaMm2) => Guard.Positive(volumeMm3) / Guard.Positive(areaMm2);

    /// <summary>Of a ball: r / 3.</summary>
    public static double OfBall(double radiusMm) => Guard.Positive(radiusMm) / 3;

    /// <summary>Of a wide plate that cools from both sides: half its thickness.</summary>
    public static double OfPlate(double thicknessMm) => Guard.Positive(thicknessMm) / 2;

    /// <summary>Of a long round bar that cools round about and not at its ends: d / 4.</summary>
    public static double OfBar(double diameterMm) => Guard.Positive(diameterMm) / 4;

    /// <summary>Of a cylinder that cools all over: r h / (2 (r + h)).</summary>
    public static double OfCylinder(double radiusMm, double heightMm)
        => Guard.Positive(radiusMm) * Guard.Positive(heightMm) / (2 * (radiusMm + heightMm));

    /// <summary>Of half a ball that cools all over: 2 r / 9.</summary>
    public static double OfHalfBall(double radiusMm) => 2 * Guard.Positive(radiusMm) / 9;

    /// <summary>Diameter of the long round bar with a modulus.</summary>
    public static double BarForMm(double modulusMm) => 4 * Guard.Positive(modulusMm);

    /// <summary>Radius of the half ball with a modulus.</summary>
    public static double HalfBallForMm(double modulusMm) => 4.5 * Guard.Positive(modulusMm);

    /// <summary>How much longer one body takes to freeze than another: the square of the ratio of their moduli.</summary>
    public static double TimeRatio(double modulusMm, double otherMm) => Math.Pow(Guard.Positive(modulusMm) / Guard.Positive(otherMm), 2);
}
