namespace Linewright.Materials;

/// <summary>A kind of stone: what it weighs, how it bends light, how the bench must treat it and what the seller must say.</summary>
/// <remarks>
/// Indices at 589 nm, from lowest to highest over the species and its directions; dispersion between 430.8 and
/// 686.7 nm; hardness by Mohs. <see cref="SpecificGravity"/> weighs a known volume;
/// <see cref="QuotedSpecificGravity"/> is for the trade's weight formulas.
/// </remarks>
public sealed record Species(
    string Key,
    string Name,
    double SpecificGravity,
    double QuotedSpecificGravity,
    double SpecificGravityLow,
    double SpecificGravityHigh,
    double RefractiveIndexLow,
    double RefractiveIndexHigh,
    double Birefringence,
    double Dispersion,
    double HardnessLow,
    double HardnessHigh,
    string Care,
    string Disclosure,
    string Source,
    string Mark) : IMaterialRow
{
    /// <summary>The weight of a volume of this stone.</summary>
    public Carats WeightOf(double volumeMm3) => Carats.OfVolume(volumeMm3, SpecificGravity);
}
