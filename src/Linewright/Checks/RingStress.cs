namespace Linewright.Checks;

/// <summary>Stresses in an eye under pull, MPa.</summary>
/// <param name="SideMPa">At the inside of the two sides, where the direct pull adds.</param>
/// <param name="CrownMPa">At the outside over the bar.</param>
public readonly record struct RingStress(double SideMPa, double CrownMPa)
{
    /// <summary>The larger of the two.</summary>
    public double WorstMPa => Math.Max(SideMPa, CrownMPa);
}
