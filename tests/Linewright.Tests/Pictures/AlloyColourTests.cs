using Linewright.Materials;
using Linewright.Pictures.Spectra;

namespace Linewright.Tests.Pictures;

public class AlloyColourTests
{
    public static TheoryData<string> WhiteGolds => new(from alloy in MaterialTables.Alloys.All where alloy.Key.Contains("-white", StringComparison.Ordinal) select alloy.Key);

    public static TheoryData<string> ColouredGolds => new(from alloy in MaterialTables.Alloys.All where alloy.Key.StartsWith("gold", StringComparison.Ordinal) && !alloy.Key.Contains("-white", StringComparison.Ordinal) select alloy.Key);

    [Theory]
    [InlineData("brass-85", 450, 0.447)] // n 0.929 + 1.729i, 0.500 + 2.337i, 0.390 + 3.187i. Source: Querry (1985), CRDC-CR-85034, 15 % zinc; Fresnel at normal incidence.
    [InlineData("brass-85", 550, 0.741)]
    [InlineData("brass-85", 650, 0.871)]
    [InlineData("brass-70", 450, 0.434)] // n 1.094 + 1.829i, 0.527 + 2.765i, 0.444 + 3.695i. Source: the same, 30 % zinc.
    [InlineData("brass-70", 550, 0.789)]
    [InlineData("brass-70", 650, 0.888)]
    public void Brass_throws_back_what_was_measured(string key, double nm, double share)
        => Assert.Equal(share, Of(key).NormalReflectance(nm), 0.004);

    [Fact]
    public void Brass_between_the_measured_ones_lies_between_them_and_a_trace_of_zinc_leaves_copper_copper()
    {
        double At(double zinc, double nm) => MetalTable.Mixture("brass", new Dictionary<string, double> { ["Cu"] = 100 - zinc, ["Zn"] = zinc }).NormalReflectance(nm);
        Assert.InRange(At(22, 550), At(15, 550), At(30, 550));
        Assert.Equal(MetalTable.Element("Cu").NormalReflectance(600), At(0.01, 600), 1e-3);
        Assert.Equal(At(29.99, 500), At(30.01, 500), 1e-3);
    }

    [Theory]
    [MemberData(nameof(WhiteGolds))]
    public void White_golds_are_as_white_as_the_trade_grades_them(string key)
    {
        // Yellowness under 24.5 is good or reasonable white, over 32 no white any more. Source: White Gold Task Force (2005),
        // after Henderson and Manchanda (2005), White gold alloys: colour measurement and grading, Gold Bulletin 38.
        Assert.InRange(Yellowness(key), 5, 24.5);
    }

    [Theory]
    [MemberData(nameof(ColouredGolds))]
    public void Yellow_and_rose_golds_are_no_white(string key) => Assert.InRange(Yellowness(key), 32, 70);

    [Fact]
    public void Colour_follows_the_composition()
    {
        // Copper reddens, silver pales, more zinc in brass makes it yellower. Source: Cretu and van der Lingen (1999), Coloured gold alloys, Gold Bulletin 32.
        Assert.True(Red("gold-750-rose") > Red("gold-750-pink") && Red("gold-750-pink") > Red("gold-750-yellow") && Red("gold-750-yellow") > Red("gold-750-pale-yellow"));
        Assert.True(Red("brass-85") > Red("brass-70"));
        Assert.True(Red("bronze-90") > Red("brass-85"), "tin does not yellow copper as zinc does");

        static double Red(string key)
        {
            var (red, green, _) = Of(key).NormalColour();
            return red / green;
        }
    }

    [Fact]
    public void A_ruby_is_red_and_a_sapphire_blue_through_six_millimetres()
    {
        // Known: a fine ruby lets red through and next to no blue; fluorescence left out. Source: Webster, Gems, from memory.
        var (red, green, blue) = Through("ruby");
        Assert.True(red > 8 * blue && red > 8 * Math.Max(green, 0), FormattableString.Invariant($"{red:0.000} {green:0.000} {blue:0.000}"));
        var (r, g, b) = Through("sapphire");
        Assert.True(b > 2 * r && b > 1.5 * g);
        static (double Red, double Green, double Blue) Through(string species)
        {
            var stone = StoneTable.Find(species);
            return Observer.Surface(Illuminant.D65, nm => Math.Exp(-6 * stone.AbsorptionPerMm.At(nm))).ToLinear();
        }
    }

    private static ComplexIndex Of(string key)
    {
        var alloy = MaterialTables.Alloys.Find(key);
        return MetalTable.Mixture(alloy.Key, alloy.Composition);
    }

    /// <summary>Yellowness index under D65. Source: ASTM E313, Cx 1.2985 and Cz 1.1335 for D65 and 2 degrees, from memory; the grades were set with D1925, its forerunner under illuminant C.</summary>
    private static double Yellowness(string key)
    {
        var colour = Observer.Surface(Illuminant.D65, Of(key).NormalReflectance);
        return 100 * (1.2985 * colour.X - 1.1335 * colour.Z) / colour.Y;
    }
}
