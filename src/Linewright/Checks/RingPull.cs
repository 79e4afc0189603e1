using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>An eye pulled by the bar that runs through it: a closed ring of rectangular section under two opposed forces.</summary>
/// <remarks>
/// An estimate on the safe side: the bar bears on an arc, not on a line, and the far side of an eye runs into its
/// link. Bending moments of a thin ring under two opposed loads, 0.3183 F R at the loads and 0.1817 F R half way
/// between; stresses from them by curved beam theory, since an eye is about as thick as its hole is wide.
/// Source: Young and Budynas, Roark's Formulas for Stress and Strain, circular rings, loading 1; curved beams of
/// rectangular section after Winkler and Bach, same book. Forces in N, lengths in mm.
/// </remarks>
public static class RingPull
{
    // Moments in F R: 1 / pi at the loads, 1/2 - 1 / pi at the sides.
    private const double AtLoads = 1 / Math.PI;
    private const double AtSides = 0.5 - AtLoads;

    /// <summary>Stresses under a pull.</summary>
    /// <param name="forceN">The pull, 0 or more.</param>
    /// <param name="holeMm">Diameter of the eye's hole.</param>
    /// <param name="wallMm">Radial thickness of its wall.</param>
    /// <param name="widthMm">Width along the bar.</param>
    public static RingStress Stress(double forceN, double holeMm, double wallMm, double widthMm)
    {
        Guard.InRange(forceN, 0, 1e6);
        double inner = Guard.Positive(holeMm) / 2, outer = inner + Guard.Positive(wallMm);
        double area = wallMm * Guard.Positive(widthMm), middle = (inner + outer) / 2;

        // The neutral line of a curved bar lies inside its middle by e.
        var neutral = wallMm / Math.Log(outer / inner);
        var e = middle - neutral;
        var side = AtSides * forceN * middle * (neutral - inner) / (area * e * inner) + DirectMPa(forceN, wallMm, widthMm);
        var crown = AtLoads * forceN * middle * (outer - neutral) / (area * e * outer);
        return new RingStress(side, crown);
    }

    /// <summary>The pull alone over the two walls: F / 2 w t, MPa; no eye bears more than this allows.</summary>
    public static double DirectMPa(double forceN, double wallMm, double widthMm)
        => Guard.Finite(forceN) / (2 * Guard.Positive(wallMm) * Guard.Positive(widthMm));

    /// <summary>Pull at which the estimate reaches a stress, for instance the 0.2 % yield, N.</summary>
    public static double ForceN(double stressMPa, double holeMm, double wallMm, double widthMm)
        => Guard.Positive(stressMPa) / Stress(1, holeMm, wallMm, widthMm).WorstMPa;
}
