using Linewright.Pictures.Spectra;

namespace Linewright.Pictures.Scenes;

/// <summary>What a stone is made of, as light sees it: clear, polished, one index (no double refraction).</summary>
/// <param name="Name">The trade's name in lower case with hyphens, or the caller's own.</param>
/// <param name="Index">Refractive index over wavelength.</param>
/// <param name="AbsorptionPerMm">Natural absorption coefficient, 1/mm, over wavelength; 0 is colourless.</param>
/// <param name="Source">Where the figures come from, with a mark where they are fitted or assumed.</param>
public sealed record StoneMaterial(string Name, RefractiveIndex Index, Spectrum AbsorptionPerMm, string Source)
{
    /// <summary>From the table of stones; every species of the house has a row.</summary>
    /// <param name="name">Species in lower case with hyphens: diamond, cubic-zirconia, ...</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such row.</exception>
    public static StoneMaterial Named(string name)
    {
        var row = StoneTable.Find(name);
        return new StoneMaterial(row.Name, row.Index, row.AbsorptionPerMm, row.Source);
    }
}
