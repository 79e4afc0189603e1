using Linewright.Brief;
using Linewright.Materials;

namespace Linewright.Tests.Core;

public class MaterialsTests
{
    public static TheoryData<string> AlloyKeys => [.. MaterialTables.Alloys.Keys];

    public static TheoryData<string> SpeciesKeys => [.. MaterialTables.Species.Keys];

    [Fact]
    public void A_carat_is_a_fifth_of_a_gram_exactly()
    {
        Assert.Equal(0.2, new Carats(1).ToGrams().Value); // Source: metric carat, CGPM 4 (1907)
        Assert.Equal(new Carats(5), new Grams(1).ToCarats());
    }

    [Fact]
    public void A_troy_ounce_is_its_definition()
    {
        Assert.Equal(31.1034768, TradeUnits.GramsPerTroyOunce); // Source: international pound (1959), 480 grains
        Assert.Equal(1, new Grams(31.1034768).TroyOunces);
        Assert.Equal(1.55517384, TradeUnits.GramsPerPennyweight);
        Assert.Equal(0.06479891, TradeUnits.GramsPerGrain);
        Assert.Equal(TradeUnits.GramsPerTroyOunce, 20 * TradeUnits.GramsPerPennyweight, 1e-12);
        Assert.Equal(TradeUnits.GramsPerTroyOunce, 480 * TradeUnits.GramsPerGrain, 1e-12);
        Assert.Equal(155.517384, new Grams(TradeUnits.GramsPerTroyOunce).ToCarats().Value, 1e-7); // Calculated: 31.1034768 / 0.2
    }

    [Theory]
    [InlineData(7, 177.8)] // Source: inch of 25.4 mm, international yard (1959)
    [InlineData(7.5, 190.5)]
    [InlineData(16, 406.4)]
    [InlineData(18, 457.2)]
    public void Inches_become_exact_millimetres(double inches, double mm)
    {
        var text = FormattableString.Invariant($$"""{"name":"x","metal":"silver-925","stone":{"diameter_mm":3},"length":{"laid_flat_in":{{inches}} } }""");
        var brief = BriefReader.Read(System.Text.Encoding.UTF8.GetBytes(text), "x").Brief!;
        Assert.Equal(mm, BriefDefaults.Resolve(brief).Length.LaidFlatMm);
    }

    [Theory]
    [InlineData(9, 375)] // Calculated: carat x 1000 / 24
    [InlineData(10, 416.667)]
    [InlineData(14, 583.333)]
    [InlineData(18, 750)]
    [InlineData(22, 916.667)]
    public void A_carat_of_gold_is_a_twenty_fourth(double carat, double perMille)
        => Assert.Equal(perMille, TradeUnits.FinenessPerMille(carat), 0.001);

    [Theory]
    [InlineData("gold-750-yellow", 15.459)] // Calculated: rule of mixtures, element densities of the CRC Handbook
    [InlineData("gold-750-rose", 15.154)]
    [InlineData("silver-925", 10.357)]
    [InlineData("platinum-950-ru", 20.702)]
    [InlineData("gold-585-yellow", 13.289)]
    [InlineData("gold-750-white-pd", 16.22)]
    [InlineData("gold-750-white-ni", 14.69)]
    [InlineData("gold-375-white-pd", 12.84)]
    [InlineData("palladium-950-ga", 11.43)]
    [InlineData("bronze-90", 8.76)]
    public void A_mixture_weighs_what_its_volumes_add_up_to(string key, double density)
        => Assert.Equal(density, MaterialTables.Alloys.Find(key).MixtureDensity(), density > 15 && density < 15.5 ? 0.002 : 0.006);

    [Theory]
    [InlineData("gold-750-yellow", 15.2, 15.9)] // Source: usual densities quoted for the alloys; from memory
    [InlineData("gold-750-white-pd", 15.9, 16.6)]
    [InlineData("gold-750-white-ni", 14.6, 14.8)]
    [InlineData("gold-585-yellow", 13.0, 13.6)]
    [InlineData("gold-585-white-pd", 14.0, 14.6)]
    [InlineData("gold-585-white-ni", 12.6, 12.9)]
    [InlineData("gold-417-yellow", 11.5, 11.8)]
    [InlineData("gold-375-yellow", 11.1, 11.4)]
    [InlineData("palladium-950-ga", 11.4, 11.8)]
    [InlineData("platinum-950-ru", 20.65, 20.75)]
    public void An_alloy_weighs_what_the_trade_quotes(string key, double low, double high)
        => Assert.InRange(MaterialTables.Alloys.Find(key).DensityGPerCm3, low, high);

    [Theory]
    [MemberData(nameof(AlloyKeys))]
    public void Every_alloy_is_whole_and_in_order(string key)
    {
        var alloy = MaterialTables.Alloys.Find(key);
        Assert.Equal(100, alloy.Composition.Values.Sum(), 1e-9);
        Assert.InRange(alloy.MixtureDensity() / alloy.DensityGPerCm3, 0.97, 1.02); // zinc contracts by up to 3 %
        Assert.InRange(alloy.DensityGPerCm3, alloy.DensityLowGPerCm3, alloy.DensityHighGPerCm3);
        Assert.True(alloy.MeltingLowC <= alloy.MeltingHighC);
        Assert.True(alloy.YieldAnnealedMPa < alloy.YieldHardMPa);
        Assert.True(alloy.YieldAnnealedMPa < alloy.TensileAnnealedMPa && alloy.YieldHardMPa < alloy.TensileHardMPa);
        Assert.True(alloy.HardnessAnnealedHv < alloy.HardnessHardHv);
        Assert.All((double[])[alloy.Colour.Red, alloy.Colour.Green, alloy.Colour.Blue], part => Assert.InRange(part, 0.3, 1));
        Assert.NotEmpty(alloy.Source);
        Assert.Contains(alloy.Mark, Marks.All);
        Assert.StartsWith(alloy.Family.ToString().ToLowerInvariant() + "-", alloy.Key, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(AlloyKeys))]
    public void The_fineness_in_a_name_is_in_the_alloy(string key)
    {
        var alloy = MaterialTables.Alloys.Find(key);
        var symbol = alloy.Family switch { MetalFamily.Gold => "Au", MetalFamily.Silver => "Ag", MetalFamily.Platinum => "Pt", MetalFamily.Palladium => "Pd", _ => null };
        if (symbol is null)
        {
            Assert.Equal(0, alloy.FinenessPerMille);
            return;
        }

        Assert.Contains(FormattableString.Invariant($"-{alloy.FinenessPerMille}"), alloy.Key, StringComparison.Ordinal);
        Assert.True(alloy.Percent(symbol) * 10 >= alloy.FinenessPerMille, "fineness is a minimum"); // Standard: ISO 9202
    }

    [Theory]
    [MemberData(nameof(AlloyKeys))]
    public void No_alloy_of_ours_holds_cadmium_or_lead_above_the_law(string key)
    {
        Assert.Equal(0.01, SkinContactLimits.CadmiumPercent); // Source: REACH (EC) 1907/2006, Annex XVII entry 23
        Assert.Equal(0.05, SkinContactLimits.LeadPercent); // Source: REACH (EC) 1907/2006, Annex XVII entry 63
        var alloy = MaterialTables.Alloys.Find(key);
        Assert.True(alloy.CadmiumPercent <= SkinContactLimits.CadmiumPercent && alloy.LeadPercent <= SkinContactLimits.LeadPercent);
        Assert.Equal(key.EndsWith("-ni", StringComparison.Ordinal), alloy.NickelPercent > 0);
    }

    [Fact]
    public void Nickel_may_leave_at_half_a_microgram()
    {
        Assert.Equal(0.5, SkinContactLimits.NickelReleaseUgPerCm2Week); // Source: REACH (EC) 1907/2006, Annex XVII entry 27
        Assert.Equal(0.2, SkinContactLimits.NickelReleasePiercingUgPerCm2Week);
    }

    [Theory]
    [InlineData("gold-750-yellow", 0.6, 0.7, 0.5, 1.0)] // Common practice and casting houses' rules
    [InlineData("silver-925", 1.25, 0.8, 0.75, 1.5)]
    [InlineData("platinum-950-ru", 1.75, 0.6, 0.5, 1.0)]
    public void Casting_asks_more_of_silver_than_of_gold(string key, double shrink, double wall, double knuckle, double bar)
    {
        var process = MaterialTables.ProcessOf(MaterialTables.Alloys.Find(key));
        Assert.Equal((shrink, wall, knuckle, bar), (process.LinearShrinkPercent, process.MinimumWallMm, process.MinimumKnuckleWallMm, process.MinimumCastBarMm));
    }

    [Fact]
    public void Every_metal_family_has_casting_habits()
        => Assert.All(MaterialTables.Alloys.All, alloy => Assert.NotEmpty(MaterialTables.ProcessOf(alloy).Source));

    [Theory]
    [MemberData(nameof(SpeciesKeys))]
    public void Every_species_is_in_order(string key)
    {
        var species = MaterialTables.Species.Find(key);
        Assert.InRange(species.SpecificGravity, species.SpecificGravityLow, species.SpecificGravityHigh);
        Assert.InRange(species.RefractiveIndexHigh - species.RefractiveIndexLow, 0, 0.06);
        Assert.True(species.Birefringence <= species.RefractiveIndexHigh - species.RefractiveIndexLow + 1e-9);
        Assert.InRange(species.Dispersion, 0.01, 0.11);
        Assert.InRange(species.HardnessLow, 5, species.HardnessHigh);
        Assert.All((string[])[species.Name, species.Care, species.Disclosure, species.Source], text => Assert.NotEmpty(text));
        Assert.Contains(species.Mark, Marks.All);
    }

    [Fact]
    public void A_diamond_of_known_volume_weighs_by_3_515()
        => Assert.Equal(0.2405, MaterialTables.Species.Find("diamond").WeightOf(0.213772 * 64).Value, 0.0005); // Calculated: 4.0 mm, exact polyhedron

    [Fact]
    public void A_pin_of_18_carat_weighs_what_its_cylinder_says()
        => Assert.Equal(0.023312, Grams.OfVolume(1.50796, 15.459).Value, 1e-5); // Calculated: wire 0.8 x 3

    [Theory]
    [InlineData("gold-750-yelow", "gold-750-yellow")]
    [InlineData("gold-750", "gold-750-yellow")]
    [InlineData("Silver-925", "silver-925")]
    public void A_misspelt_alloy_is_answered_with_the_nearest(string wrong, string near)
    {
        Assert.Equal(near, MaterialTables.Alloys.Nearest(wrong));
        Assert.Contains($"did you mean '{near}'?", Assert.Throws<ArgumentException>(() => MaterialTables.Alloys.Find(wrong)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nonsense_is_answered_with_no_suggestion()
        => Assert.Null(MaterialTables.Species.Nearest("xqzzkw"));
}
