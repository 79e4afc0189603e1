namespace Linewright.Pictures.Spectra;

/// <summary>One row of the table of stones: how it bends light and what it keeps of it.</summary>
/// <param name="Name">Species in lower case with hyphens.</param>
/// <param name="Index">Refractive index.</param>
/// <param name="AbsorptionPerMm">Natural absorption coefficient, 1/mm.</param>
/// <param name="Source">Where the figures come from, with their mark.</param>
public sealed record StoneOptics(string Name, RefractiveIndex Index, Spectrum AbsorptionPerMm, string Source);
