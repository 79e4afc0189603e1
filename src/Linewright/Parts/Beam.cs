using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>Deflection and stress of slender straight bars: pins, cross bars, leaves.</summary>
/// <remarks>
/// Lengths in mm, forces in N, modulus and stress in MPa, second moments of area in mm4. Small deflections, linear
/// elastic, shear left out: for a bar shorter than five times its thickness the deflection comes out too small.
/// Source: Young and Budynas, Roark's Formulas for Stress and Strain, chapter on straight beams, concentrated load.
/// </remarks>
public static class Beam
{
    /// <summary>Second moment of area of a rectangle, mm4: width across the bending, height along it.</summary>
    public static double RectangleMm4(double widthMm, double heightMm)
        => Guard.Positive(widthMm) * Guard.Positive(heightMm) * heightMm * heightMm / 12;

    /// <summary>Second moment of area of a round bar, mm4.</summary>
    public static double RoundMm4(double diameterMm) => Math.PI * Math.Pow(Guard.Positive(diameterMm), 4) / 64;

    /// <summary>End deflection of a cantilever loaded at its end: F L3 / 3 E I, mm.</summary>
    public static double CantileverDeflectionMm(double forceN, double lengthMm, double modulusMPa, double momentMm4)
        => Bend(forceN, lengthMm, modulusMPa, momentMm4) / 3;

    /// <summary>Deflection in the middle of a bar on two supports, loaded in the middle: F L3 / 48 E I, mm.</summary>
    public static double SupportedDeflectionMm(double forceN, double spanMm, double modulusMPa, double momentMm4)
        => Bend(forceN, spanMm, modulusMPa, momentMm4) / 48;

    /// <summary>The same with both ends held fast, as a bar cast between its cheeks: F L3 / 192 E I, mm.</summary>
    public static double FixedDeflectionMm(double forceN, double spanMm, double modulusMPa, double momentMm4)
        => Bend(forceN, spanMm, modulusMPa, momentMm4) / 192;

    /// <summary>Largest bending stress of a cantilever, at its root: F L c / I, MPa; c is half the height.</summary>
    public static double CantileverStressMPa(double forceN, double lengthMm, double heightMm, double momentMm4)
        => Fibre(Guard.Finite(forceN) * Guard.Positive(lengthMm), heightMm, momentMm4);

    /// <summary>Largest bending stress of a bar on two supports, in the middle: F L c / 4 I, MPa.</summary>
    public static double SupportedStressMPa(double forceN, double spanMm, double heightMm, double momentMm4)
        => Fibre(Guard.Finite(forceN) * Guard.Positive(spanMm) / 4, heightMm, momentMm4);

    /// <summary>Largest bending stress of a bar with fixed ends, in the middle and at the ends: F L c / 8 I, MPa.</summary>
    public static double FixedStressMPa(double forceN, double spanMm, double heightMm, double momentMm4)
        => Fibre(Guard.Finite(forceN) * Guard.Positive(spanMm) / 8, heightMm, momentMm4);

    private static double Bend(double force, double length, double modulus, double moment)
        => Guard.Finite(force) * Math.Pow(Guard.Positive(length), 3) / (Guard.Positive(modulus) * Guard.Positive(moment));

    private static double Fibre(double bending, double height, double moment)
        => bending * Guard.Positive(height) / (2 * Guard.Positive(moment));
}
