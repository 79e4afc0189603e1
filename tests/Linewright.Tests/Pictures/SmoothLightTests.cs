using Linewright.Pictures.Images;
using Linewright.Pictures.Rays;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

/// <summary>Where light changes slowly, on matte ground and where the lens spreads it, no grain is left: not in dots, not in blotches.</summary>
public class SmoothLightTests
{
    private const int Width = 96, Height = 64, Samples = 96;

    [Fact]
    public void A_body_out_of_focus_runs_out_into_its_ground_without_dots()
    {
        // Known: a body of light 1.2 before a ground of 0.4, run together over 24 pixels; a sample sees one or the other.
        static double Cover(int x)
        {
            var t = Math.Clamp((x - 36) / 24.0, 0, 1);
            return t * t * (3 - 2 * t);
        }

        SampleOutcome See(int x, int y, Random random)
        {
            var isBody = random.NextDouble() < Cover(x);
            return isBody ? Body(1.2f * Grain(random, 0.7f)) : Paper(0.4f * Grain(random, 0.7f), 12);
        }

        static double Truth(int x, int y) => 0.4 + 0.8 * Cover(x);
        float[] raw = Draw(See, false), shown = Draw(See, true);

        // Before, the outermost pixels of the blur found no kin and kept their grain: 0.038, and 0.021 over all.
        static bool IsRim(int x) => Cover(x) is > 0 and < 0.2;
        Assert.InRange(Off(raw, Truth, IsRim), 0.035, 0.045);
        Assert.InRange(Off(shown, Truth, IsRim), 0, 0.012);
        Assert.InRange(Off(shown, Truth, _ => true), 0, 0.012);
    }

    [Fact]
    public void Light_on_matte_ground_is_smooth_near_and_wide_though_single_samples_flash()
    {
        // Known: slow light; one sample in 500 brings twenty times of it, as one does that found a lamp by way of polished metal.
        static double Truth(int x, int y) => 0.5 + 0.2 * Math.Sin(x / 15.0) * Math.Cos(y / 20.0);
        SampleOutcome See(int x, int y, Random random) => Paper((float)Truth(x, y) * Flashing(random), 0);
        float[] raw = Draw(See, false), shown = Draw(See, true);

        // Before: 0.0140 a pixel and 0.0062 in means of eight by eight, more than without any filter.
        Assert.InRange(Off(raw, Truth, _ => true), 0.045, 0.06);
        Assert.InRange(Off(shown, Truth, _ => true), 0, 0.0105);
        Assert.InRange(OffInBlocks(shown, Truth), 0, 0.0055);
    }

    [Fact]
    public void A_hard_shadow_on_matte_ground_keeps_its_edge()
    {
        static double Truth(int x, int y) => x < Width / 2 ? 0.3 : 0.6;
        SampleOutcome See(int x, int y, Random random) => Paper((float)Truth(x, y) * Flashing(random), 0);
        var shown = Draw(See, true);

        // Before: 0.0145 there and 0.0104 over all. Ten times as much would be a shadow run over one pixel on either side.
        Assert.InRange(Off(shown, Truth, x => Math.Abs(x - Width / 2 + 0.5) < 4), 0, 0.012);
        Assert.InRange(Off(shown, Truth, _ => true), 0, 0.006);
    }

    [Fact]
    public void A_pixel_belongs_to_the_surface_that_most_samples_saw()
    {
        // Of seven samples four saw surface 5, but neither the first nor the last; gathered in one go, and in two parts joined.
        int[] facets = [9, 5, 5, 7, 5, 5, 9];
        for (var split = 0; split <= facets.Length; split++)
        {
            PixelSums first = default, second = new PixelSums { Count = split };
            for (var i = 0; i < facets.Length; i++)
            {
                (i < split ? ref first : ref second).Add(new SampleOutcome { Facet = facets[i], Blur = 2 });
            }

            first.Join(second);
            Assert.Equal(5, first.Facet);
            Assert.Equal(2f * facets.Length, first.Blur);
        }
    }

    [Fact]
    public void The_lens_spreads_a_point_by_the_rule_of_similar_triangles()
    {
        // A thin lens of radius 0.12 sharp at 4: seen from the sharp plane, a ground at twice that distance spreads by 0.12 x (8 - 4) / 8 = 0.06 mm.
        var scene = TestScenes.Furnace with
        {
            Ground = Ground.Of(GroundKind.Plain, -8),
            Lens = new Lens(Vec3.Zero, new Vec3(0, 0, -1), Vec3.UnitY, 0.01, 4, 0.12),
        };
        var size = new PictureSize(4, 4);
        var settings = new RenderSettings { MaxSamples = 1 };
        using var compiled = new CompiledScene(scene, size, settings);
        var world = compiled.World;
        var seen = LightPath.Trace(ref world, compiled.Record, 2, 2, 0);
        var pixel = 2 * 4 * Math.Tan(0.005) / 4;
        Assert.Equal(0.06 / pixel, seen.Blur, 0.01 * 0.06 / pixel);
    }

    [Fact]
    public void Paper_round_a_ball_out_of_focus_comes_near_to_the_picture_of_many_samples()
    {
        var scene = TestScenes.Furnace.WithBall(ConductorFinish.Polished(MetalTable.Element("Ag"))) with
        {
            Ground = Ground.Of(GroundKind.Paper, -1),
            Lights = [AreaLight.Facing(new Vec3(-2, -1, 5), Vec3.Zero, 2, 2, 6504, 6)],
            Surroundings = new Surroundings(0.4, 0.3, 0.1, [], Illuminant.D65),
            Lens = new Lens(new Vec3(0, -6, 3), new Vec3(0, 0, -0.3), Vec3.UnitZ, 0.5, 4.4, 0.12),
        };
        var size = new PictureSize(80, 60);
        Picture Take(int samples, uint seed, bool denoise) => PathTracer.Render(
            scene, size, new RenderSettings { MaxSamples = samples, Seed = seed, Denoise = denoise, KeepGuides = true, Clamp = 40 }, null, TestContext.Current.CancellationToken);
        Picture truth = Take(1024, 7, false), raw = Take(64, 1, false), shown = Take(64, 1, true);
        var guides = truth.Guides!;
        bool IsPure(int i) => Enumerable.Range(0, 3).Sum(c => guides.Normal[3 * i + c] * guides.Normal[3 * i + c]) >= 0.98f;
        double Error(Picture of, Func<int, bool> where) => Math.Sqrt(Enumerable.Range(0, 3 * size.Count)
            .Where(k => where(k / 3)).Average(k => Math.Pow(of.Colour[k] - truth.Colour[k], 2)));
        bool IsGround(int i) => guides.Facet[i] == 1 && IsPure(i);

        // The truth's own noise, about 0.004, is in all. Before: 0.35 of the raw error.
        Assert.InRange(Error(shown, IsGround), 0, 0.32 * Error(raw, IsGround));
    }

    private static SampleOutcome Paper(float light, float blur) => new()
    {
        Colour = new Float3(light, light, light),
        Alpha = 1,
        Albedo = new Float3(0.5f, 0.5f, 0.5f),
        Normal = new Float3(0, 0, 1),
        Facet = 1,
        Blur = blur,
    };

    private static SampleOutcome Body(float light)
        => Paper(light, 12) with { Albedo = new Float3(0.9f, 0.9f, 0.9f), Normal = new Float3(0, -0.8f, 0.6f), Facet = 2 };

    /// <summary>A factor of mean 1: a sum of twelve uniform numbers is nearly normal.</summary>
    private static float Grain(Random random, float spread) => 1 + spread * (float)(Enumerable.Range(0, 12).Sum(_ => random.NextDouble()) - 6);

    /// <summary>The same with sparks.</summary>
    private static float Flashing(Random random) => 0.96f * Grain(random, 0.5f) + (random.Next(500) == 0 ? 20 : 0);

    private static float[] Draw(Func<int, int, Random, SampleOutcome> see, bool denoise)
        => new RenderRun(new Seen(see), new PictureSize(Width, Height), new RenderSettings { MaxSamples = 1, Denoise = denoise }, TestContext.Current.CancellationToken)
            .Draw(null).Colour;

    /// <summary>Root mean square error, away from the picture's border.</summary>
    private static double Off(float[] colour, Func<int, int, double> truth, Func<int, bool> where) => Math.Sqrt(Enumerable.Range(0, Width * Height)
        .Where(i => i % Width is >= 8 and < Width - 8 && i / Width is >= 8 and < Height - 8 && where(i % Width))
        .Average(i => Math.Pow(colour[3 * i] - truth(i % Width, i / Width), 2)));

    /// <summary>The same of means of eight by eight pixels: blotches.</summary>
    private static double OffInBlocks(float[] colour, Func<int, int, double> truth) => Math.Sqrt(Enumerable.Range(0, Width * Height)
        .Where(i => i % Width is >= 8 and < Width - 8 && i / Width is >= 8 and < Height - 8)
        .GroupBy(i => (i % Width / 8, i / Width / 8))
        .Average(block => Math.Pow(block.Average(i => colour[3 * i] - truth(i % Width, i / Width)), 2)));

    /// <summary>Takes known samples instead of tracing.</summary>
    private sealed class Seen(Func<int, int, Random, SampleOutcome> see) : ISampler
    {
        public long Pass(ushort[] wanted, PixelSums[] pixels, CancellationToken stop)
        {
            for (var at = 0; at < pixels.Length; at++)
            {
                var random = new Random(at);
                while (pixels[at].Count < Samples)
                {
                    pixels[at].Add(see(at % Width, at / Width, random));
                }
            }

            return Samples * pixels.Length;
        }

        public void Dispose()
        {
            // Holds nothing.
        }
    }
}
