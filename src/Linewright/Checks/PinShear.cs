using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>What a hinge pin or cross bar bears before it is cut through at both cheeks.</summary>
/// <remarks>Forces in N, stress in MPa. Bending of a long pin gives way earlier: see <see cref="Parts.Beam"/>.</remarks>
public static class PinShear
{
    /// <summary>Shear at yield as a part of the tensile yield: 1 / square root of 3. Source: von Mises (1913), distortion energy.</summary>
    public const double YieldInShear = 0.577;

    /// <summary>Shear stress at which a metal of the given 0.2 % yield gives way, MPa.</summary>
    public static double YieldMPa(double tensileYieldMPa) => YieldInShear * Guard.Positive(tensileYieldMPa);

    /// <summary>The two sections that bear in double shear, mm2.</summary>
    public static double AreaMm2(double diameterMm) => 2 * Math.PI * Guard.Positive(diameterMm) * diameterMm / 4;

    /// <summary>Pull that a pin bears in double shear at a given shear stress, N.</summary>
    public static double ForceN(double diameterMm, double shearMPa) => AreaMm2(diameterMm) * Guard.Positive(shearMPa);

    /// <summary>Shear stress in a pin under a pull, MPa.</summary>
    public static double StressMPa(double forceN, double diameterMm) => Guard.Finite(forceN) / AreaMm2(diameterMm);
}
