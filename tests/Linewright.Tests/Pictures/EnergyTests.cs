using Linewright.Pictures.Rays;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

/// <summary>In an even light of 1, whatever loses nothing cannot be told from the light: energy in = energy out.</summary>
public class EnergyTests
{
    private static readonly RenderSettings Many = new() { MaxSamples = 256 };

    [Theory]
    [InlineData("diamond")]
    [InlineData("cubic-zirconia")]
    [InlineData("moissanite")]
    [InlineData("quartz")]
    [InlineData("topaz")]
    public void A_clear_stone_vanishes_in_a_white_furnace(string species)
    {
        var clear = StoneMaterial.Named(species) with { AbsorptionPerMm = Spectrum.Zero };
        IsWhite(TestScenes.Furnace.WithStone(clear), 0.004);
    }

    [Theory]
    [InlineData(0.01, 0.01, 0.003)]
    [InlineData(0.2, 0.2, 0.003)]
    [InlineData(0.6, 0.6, 0.005)]
    [InlineData(1.0, 1.0, 0.01)]
    [InlineData(0.05, 0.3, 0.005)]
    [InlineData(0.5, 0.1, 0.005)]
    public void A_perfect_mirror_vanishes_at_any_roughness(double along, double across, double tolerance)
        => IsWhite(TestScenes.Furnace.WithBall(new ConductorFinish(ComplexIndex.Perfect, along, across, Vec3.UnitX)), tolerance);

    [Theory]
    [InlineData(GroundKind.Plain, 0.004)]
    [InlineData(GroundKind.Paper, 0.03)] // Its tone and slopes move the light about and lose some below the horizon.
    [InlineData(GroundKind.Clay, 0.05)]
    public void A_white_ground_vanishes(GroundKind kind, double tolerance)
        => IsWhite(TestScenes.Furnace with { Ground = new Ground(kind, 0, 1, 1, 1) }, tolerance);

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.5)]
    [InlineData(0.15)]
    public void A_coat_over_white_loses_nothing(double cosine)
    {
        // Sum over all ways in of what leaves by one way out, both layers white: one.
        var scene = TestScenes.Furnace with { Ground = new Ground(GroundKind.Stone, 0, 1, 1, 1) };
        using var compiled = new CompiledScene(scene, new Linewright.Pictures.Images.PictureSize(1, 1), Many);
        var (world, ground) = (compiled.World, compiled.Record.Ground);
        var wo = new Float3((float)Math.Sqrt(1 - cosine * cosine), 0, (float)cosine);
        var surface = GroundScatter.Surface(ref world, ground, wo);
        double sum = 0;
        const int side = 400;
        for (var i = 0; i < side * side; i++)
        {
            double z = (i % side + 0.5) / side, r = Math.Sqrt(1 - z * z), phi = 2 * Math.PI * (i / side + 0.5) / side;
            var body = surface.Evaluate(ref world, wo, new Float3((float)(r * Math.Cos(phi)), (float)(r * Math.Sin(phi)), (float)z), out var coat, out var density);
            Assert.True(density > 0);
            sum += (body + coat) * 2 * Math.PI / (side * side);
        }

        Assert.Equal(1, sum, 0.006);
    }

    [Fact]
    public void A_ruby_keeps_green_and_lets_red_through()
    {
        var close = TestScenes.Furnace with { Lens = Lens.Focused(new Vec3(0, -6, 3), Vec3.Zero, 0.12, 0) };
        var (red, green, blue, _) = TestScenes.Mean(close.WithStone(StoneMaterial.Named("ruby")), Many);
        Assert.True(red > 1.4 * green && red > 1.1 * blue, FormattableString.Invariant($"{red} {green} {blue}"));
        var clear = StoneMaterial.Named("ruby") with { AbsorptionPerMm = Spectrum.Zero };
        Assert.True(red < TestScenes.Mean(close.WithStone(clear), Many).Red + 0.02);
    }

    [Fact]
    public void Absorption_follows_the_length_of_the_way()
    {
        // Source: Lambert (1760): exp(-a d). A plate 2 mm thick seen straight on, with n = 1: no border, only the way.
        var glass = new StoneMaterial("test", RefractiveIndex.Cauchy(1, 0), Spectrum.Constant(0.35), "test");
        var plate = Linewright.Solids.Polyhedra.ConvexPolyhedron.FromPlanes(
        [
            new(Vec3.UnitX, 9), new(-Vec3.UnitX, 9), new(Vec3.UnitY, 9), new(-Vec3.UnitY, 9), new(Vec3.UnitZ, 1), new(-Vec3.UnitZ, 1),
        ]).Body!;
        var scene = TestScenes.Furnace with
        {
            Lens = new Lens(new Vec3(0, 0, 100), Vec3.Zero, Vec3.UnitY, 0.01, 100, 0),
            Bodies = [plate],
            Stones = [new StoneInstance(0, Pose.Identity, glass)],
        };
        var (_, green, _, _) = TestScenes.Mean(scene, Many);
        Assert.Equal(Math.Exp(-0.7), green, 2e-3);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.4)]
    public void Aiming_chance_and_both_together_find_the_same_light(double roughness)
    {
        // Source: Veach (1997), thesis, chapter 9: every weighting that adds up to one has the same mean. Four standard errors.
        var scene = TestScenes.Furnace.WithBall(ConductorFinish.Even(MetalTable.Element("Ag"), roughness)) with
        {
            Ground = Ground.Of(GroundKind.Stone, -1) with { Red = 0.5, Green = 0.5, Blue = 0.5 },
            Lights = [AreaLight.Facing(new Vec3(-3, -2, 4), Vec3.Zero, 2, 1.5, 5000, 6)],
            Surroundings = new Surroundings(0.6, 0.2, 0.1, [new LightStrip(new Vec3(1, -0.3, 0.6), Vec3.UnitZ, 0.5, 0.2, 0.3, 4)], Illuminant.D65),
            Lens = Lens.Focused(new Vec3(0, -6, 3), Vec3.Zero, 0.7, 0),
        };
        var both = TestScenes.Mean(scene, Many, 16);
        var aimed = TestScenes.Mean(scene, Many with { Ways = 1, Seed = 2 }, 16);
        var chance = TestScenes.Mean(scene, Many with { Ways = 2, Seed = 3, MaxSamples = 1024 }, 16);
        Assert.InRange(Math.Abs(both.Green - aimed.Green), 0, 4 * (both.Error + aimed.Error));
        Assert.InRange(Math.Abs(both.Green - chance.Green), 0, 4 * (both.Error + chance.Error));
        Assert.True(both.Error < Math.Min(aimed.Error, 2 * chance.Error), "both together are the best way, or nearly");
        Assert.InRange(both.Error / both.Green, 0, 0.02);
    }

    private static void IsWhite(Scene scene, double tolerance)
    {
        var (red, green, blue, error) = TestScenes.Mean(scene, Many);
        Assert.InRange(error, 0, 0.01);
        Assert.Equal(1, red, tolerance + 4 * error);
        Assert.Equal(1, green, tolerance + 4 * error);
        Assert.Equal(1, blue, tolerance + 6 * error);
    }
}
