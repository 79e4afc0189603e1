using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The leaf of a box clasp's tongue: how far it may be pressed before it keeps a set, and how hard that is.</summary>
/// <remarks>
/// A straight leaf of even section, held at the fold and pressed at the catch: length from the fold to the catch,
/// press the travel of the catch, both mm. Where both leaves of a V give, they share the press. A soft or soldered
/// leaf has the annealed yield. Derived from the cantilever of <see cref="Beam"/> with the deflection given.
/// </remarks>
public static class TongueSpring
{
    /// <summary>Part of the yield strain that a leaf may use and still spring back after years. Common practice.</summary>
    public const double EnduringPart = LineSpecs.StrainShare;

    /// <summary>Strain at the fold: 1.5 t d / L2.</summary>
    public static double Strain(double thicknessMm, double pressMm, double lengthMm)
        => 1.5 * Guard.Positive(thicknessMm) * Guard.InRange(pressMm, 0, 1e3) / (Guard.Positive(lengthMm) * lengthMm);

    /// <summary>Stress at the fold, MPa, while the metal stays elastic.</summary>
    public static double StressMPa(double modulusMPa, double thicknessMm, double pressMm, double lengthMm)
        => Guard.Positive(modulusMPa) * Strain(thicknessMm, pressMm, lengthMm);

    /// <summary>Force at the catch: E b t3 d / 4 L3, N.</summary>
    public static double ForceN(double modulusMPa, double widthMm, double thicknessMm, double pressMm, double lengthMm)
        => Guard.Positive(modulusMPa) * Guard.Positive(widthMm) * Math.Pow(Guard.Positive(thicknessMm), 3)
            * Guard.InRange(pressMm, 0, 1e3) / (4 * Math.Pow(Guard.Positive(lengthMm), 3));

    /// <summary>Strain at which a leaf keeps a set: the 0.2 % yield over the modulus.</summary>
    public static double YieldStrain(double yieldMPa, double modulusMPa) => Guard.Positive(yieldMPa) / Guard.Positive(modulusMPa);

    /// <summary>Strain to design for.</summary>
    public static double EnduringStrain(double yieldMPa, double modulusMPa) => EnduringPart * YieldStrain(yieldMPa, modulusMPa);

    /// <summary>Shortest leaf that stays within a strain: the square root of 1.5 t d / strain, mm.</summary>
    public static double LeastLengthMm(double thicknessMm, double pressMm, double strain)
        => Math.Sqrt(1.5 * Guard.Positive(thicknessMm) * Guard.InRange(pressMm, 0, 1e3) / Guard.Positive(strain));
}
