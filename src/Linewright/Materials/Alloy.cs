using System.Text.Json.Serialization;

namespace Linewright.Materials;

/// <summary>A metal as it comes from the refiner: what is in it, what it weighs and what it bears.</summary>
/// <remarks>
/// Strength depends on the supplier, grain and cold work; take every figure as +-20 %. Annealed is also
/// the right guess for a casting; hard is cold worked by 60 to 75 % or age hardened. The name of an alloy is
/// a nominal fineness, to be assayed.
/// </remarks>
public sealed record Alloy(
    string Key,
    string Name,
    MetalFamily Family,
    double FinenessPerMille,
    IReadOnlyDictionary<string, double> Composition,
    double DensityGPerCm3,
    double DensityLowGPerCm3,
    double DensityHighGPerCm3,
    double MeltingLowC,
    double MeltingHighC,
    [property: JsonPropertyName("modulus_mpa")] double ModulusMPa,
    [property: JsonPropertyName("yield_annealed_mpa")] double YieldAnnealedMPa,
    [property: JsonPropertyName("yield_hard_mpa")] double YieldHardMPa,
    [property: JsonPropertyName("tensile_annealed_mpa")] double TensileAnnealedMPa,
    [property: JsonPropertyName("tensile_hard_mpa")] double TensileHardMPa,
    double HardnessAnnealedHv,
    double HardnessHardHv,
    LinearColour Colour,
    string Note,
    string Source,
    string Mark) : IMaterialRow
{
    /// <summary>Nickel in mass %; above zero the release test for skin contact applies.</summary>
    [JsonIgnore]
    public double NickelPercent => Percent("Ni");

    /// <summary>Cadmium in mass %.</summary>
    [JsonIgnore]
    public double CadmiumPercent => Percent("Cd");

    /// <summary>Lead in mass %.</summary>
    [JsonIgnore]
    public double LeadPercent => Percent("Pb");

    /// <summary>Mass % of an element by its symbol, 0 where the alloy has none.</summary>
    public double Percent(string element) => Composition.GetValueOrDefault(element);

    /// <summary>Density of the composition mixed by volume, g/cm3: sum of w / sum of (w / rho).</summary>
    /// <remarks>Within about 1 % of measured alloys, 3 % where zinc or gallium contracts. Calculated.</remarks>
    public double MixtureDensity()
    {
        double mass = 0, volume = 0;
        foreach (var (element, percent) in Composition)
        {
            mass += percent;
            volume += percent / MaterialTables.Elements.Find(element).DensityGPerCm3;
        }

        return mass / volume;
    }

    /// <summary>0.2 % yield strength in MPa in a temper.</summary>
    public double YieldMPa(Temper temper) => temper == Temper.Hard ? YieldHardMPa : YieldAnnealedMPa;

    /// <summary>Tensile strength in MPa in a temper.</summary>
    public double TensileMPa(Temper temper) => temper == Temper.Hard ? TensileHardMPa : TensileAnnealedMPa;

    /// <summary>The mass of a volume of this alloy.</summary>
    public Grams MassOf(double volumeMm3) => Grams.OfVolume(volumeMm3, DensityGPerCm3);
}
