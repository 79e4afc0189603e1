using Linewright.Materials;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;

namespace Linewright.Tests.Pictures;

public class SpectraTests
{
    [Theory]
    [InlineData(589.3, 2.4173, 2e-4)] // Line D. Source: Peter (1923), Z. Phys. 15, 358; Edwards and Ochoa (1981) give 2.417
    [InlineData(486.1, 2.4354, 4e-4)] // Line F. Source: Peter (1923), as tabulated in the CRC Handbook, from memory
    [InlineData(656.3, 2.4099, 4e-4)] // Line C. Source: the same
    public void Diamond_bends_light_as_measured(double nm, double index, double tolerance)
        => Assert.Equal(index, StoneTable.Find("diamond").Index.At(nm), tolerance);

    [Theory]
    [InlineData("diamond", 0.044, 6e-4)] // Source: Webster, Gems: fire of diamond between B and G
    [InlineData("sapphire", 0.018, 6e-4)] // Source: the same
    [InlineData("quartz", 0.013, 6e-4)] // Source: the same
    public void Measured_curves_have_the_fire_that_the_trade_quotes(string species, double bMinusG, double tolerance)
        => Assert.Equal(bMinusG, StoneTable.Find(species).Index.BMinusG, tolerance);

    [Fact]
    public void Every_species_and_every_alloy_of_the_house_has_its_light()
    {
        foreach (var species in MaterialTables.Species.All)
        {
            var stone = StoneMaterial.Named(species.Key);
            Assert.InRange(stone.Index.AtD, species.RefractiveIndexLow - 0.005, species.RefractiveIndexHigh + 0.005);
            Assert.Equal(species.Dispersion, stone.Index.BMinusG, 1.5e-3);
            for (var nm = 390.0; nm < 720; nm += 10)
            {
                Assert.True(stone.Index.At(nm) > stone.Index.At(nm + 10), $"{species.Key}: the index falls with wavelength");
                Assert.True(stone.AbsorptionPerMm.At(nm) >= 0);
            }
        }

        foreach (var alloy in MaterialTables.Alloys.All)
        {
            // The alloys' table has colours mixed from reflectances, ours from permittivities: they agree in kind, not in digits.
            var (red, green, blue) = MetalTable.Mixture(alloy.Name, alloy.Composition).NormalColour();
            Assert.True(Math.Abs(red - alloy.Colour.Red) < 0.14 && Math.Abs(green - alloy.Colour.Green) < 0.14 && Math.Abs(blue - alloy.Colour.Blue) < 0.2,
                FormattableString.Invariant($"{alloy.Key}: {red:0.00} {green:0.00} {blue:0.00} against {alloy.Colour}"));
        }
    }

    [Theory]
    [InlineData("Au", 500, 0.504, 0.06)] // Source: Hass (1965), AIP Handbook, evaporated films, from memory
    [InlineData("Au", 550, 0.815, 0.04)]
    [InlineData("Au", 600, 0.919, 0.03)]
    [InlineData("Au", 650, 0.955, 0.03)]
    [InlineData("Ag", 450, 0.966, 0.03)]
    [InlineData("Ag", 550, 0.979, 0.03)]
    [InlineData("Ag", 650, 0.983, 0.03)]
    [InlineData("Cu", 500, 0.600, 0.06)]
    public void Metals_throw_back_what_was_measured(string symbol, double nm, double share, double tolerance)
        => Assert.Equal(share, MetalTable.Element(symbol).NormalReflectance(nm), tolerance);

    [Fact]
    public void Gold_is_yellow_silver_white_and_palladium_whitens()
    {
        var (goldRed, goldGreen, goldBlue) = MetalTable.Element("Au").NormalColour();
        Assert.True(goldRed > goldGreen && goldGreen > goldBlue + 0.2 && goldBlue < 0.45);
        var (silverRed, _, silverBlue) = MetalTable.Element("Ag").NormalColour();
        Assert.InRange(silverRed - silverBlue, 0, 0.08);
        var white = MaterialTables.Alloys.Find("gold-750-white-pd");
        var (red, _, blue) = MetalTable.Mixture(white.Name, white.Composition).NormalColour();
        Assert.InRange(red - blue, 0.02, 0.2);
    }

    [Fact]
    public void The_observer_sums_to_the_published_integrals_and_daylight_is_white()
    {
        // Source: ISO/CIE 11664-1: sums at 1 nm 106.8655 (x), 106.8569 (y), 106.8922 (z); ours end at 780 and step over 5 nm.
        var even = Observer.Sum(Spectrum.Constant(1));
        Assert.Equal(106.857, even.Y, 0.01);
        Assert.Equal(1.0 / 3, even.ChromaX, 1e-4);
        Assert.Equal(1.0 / 3, even.ChromaY, 1e-4);

        // Source: ISO/CIE 11664-2: D65 0.31272, 0.32903; A 0.44758, 0.40745.
        var day = Observer.Sum(Illuminant.D65);
        Assert.Equal(0.31272, day.ChromaX, 1e-4);
        Assert.Equal(0.32903, day.ChromaY, 1e-4);
        var lamp = Observer.Sum(Illuminant.A);
        Assert.Equal(0.44758, lamp.ChromaX, 2e-4);
        Assert.Equal(0.40745, lamp.ChromaY, 2e-4);
        var (red, green, blue) = new Tristimulus(day.X / day.Y, 1, day.Z / day.Y).ToLinear();
        Assert.Equal(1, red, 2e-3);
        Assert.Equal(1, green, 2e-3);
        Assert.Equal(1, blue, 2e-3);
    }

    [Fact]
    public void Linear_light_goes_to_colour_and_back()
    {
        var (red, green, blue) = Tristimulus.FromLinear(0.2, 0.5, 0.7).ToLinear();
        Assert.Equal((0.2, 0.5, 0.7), (Math.Round(red, 3), Math.Round(green, 3), Math.Round(blue, 3)));
    }

    [Theory]
    [InlineData(0.78, 0.76, 0.72)]
    [InlineData(0.46, 0.27, 0.19)]
    [InlineData(0.055, 0.065, 0.1)]
    public void A_ground_has_the_colour_it_was_given(double red, double green, double blue)
    {
        var reflectance = Reflectance.OfColour(red, green, blue);
        var (r, g, b) = Observer.Surface(Illuminant.D65, reflectance.At).ToLinear();
        Assert.Equal(red, r, 5e-3);
        Assert.Equal(green, g, 5e-3);
        Assert.Equal(blue, b, 5e-3);
        Assert.All(Enumerable.Range(0, 40), i => Assert.InRange(reflectance.At(390 + 9 * i), 0, 1));
    }
}
