using Linewright.Pictures.Denoising;
using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

public class ShadowFilterTests
{
    [Fact]
    public void Noise_on_the_ground_is_evened_out_and_bodies_keep_their_edge()
    {
        const int width = 60, height = 40;
        var alpha = new float[width * height];
        for (var i = 0; i < alpha.Length; i++)
        {
            // A body on the right half; on the ground every second pixel says that all light is blocked.
            alpha[i] = i % width >= 30 ? 1 : (i % width + i / width) % 2;
        }

        ShadowFilter.Run(width, height, at => at % width < 30, _ => 1, alpha, new ParallelOptions());
        for (var i = 0; i < alpha.Length; i++)
        {
            var (low, high) = i % width >= 30 ? (1f, 1f) : (0.44f, 0.56f);
            Assert.InRange(alpha[i], low, high);
        }
    }

    [Fact]
    public void A_known_shadow_comes_out_smooth_far_off_and_keeps_its_dark_line_of_contact()
    {
        // Known: a line of contact that fades within 2.5 pixels, a penumbra of some 40, next to nothing beyond; 32 yes or no a pixel.
        const int width = 160, height = 90, body = 120, samples = 32;
        static double Truth(int x) => 0.5 * Math.Exp((x + 1 - body) / 2.5) + 0.3 / (1 + Math.Exp((body - 41 - x) / 12.0)) + 0.004;
        var random = new Random(5);
        var raw = Enumerable.Range(0, width * height).Select(i => i % width >= body
            ? 1f
            : Enumerable.Range(0, samples).Count(_ => random.NextDouble() < Truth(i % width)) / (float)samples).ToArray();
        var alpha = (float[])raw.Clone();
        ShadowFilter.Run(width, height, at => at % width < body, _ => samples, alpha, new ParallelOptions());
        double Off(float[] of, int from, int to) => Math.Sqrt(Enumerable.Range(0, width * height)
            .Where(i => i % width >= from && i % width < to).Average(i => Math.Pow(of[i] - Truth(i % width), 2)));
        Assert.InRange(Off(alpha, 0, body - 25), 0, 0.0055);
        Assert.InRange(Off(raw, 0, body - 25), 0.03, 0.06);

        // One Gaussian smooth enough far off, 5 pixels wide, takes the line of contact off by 0.18 and the whole ground by 0.034.
        Assert.InRange(Off(alpha, body - 4, body), 0, 0.11);
        Assert.InRange(Off(alpha, 0, body), 0, 0.022);
        Assert.InRange(Enumerable.Range(0, width * height).Where(i => i % width < body - 25).Max(i => Math.Abs(alpha[i] - Truth(i % width))), 0, 0.02);
    }

    [Fact]
    public void Few_samples_filtered_show_the_shadow_of_many_without_a_halo_at_the_edge()
    {
        var scene = TestScenes.Furnace.WithBall(ConductorFinish.Polished(MetalTable.Element("Ag"))) with
        {
            Ground = Ground.Of(GroundKind.Paper, -1) with { Transparent = true },
            Lights = [AreaLight.Facing(new Vec3(-2, -1, 5), Vec3.Zero, 3, 3, 6504, 3)],
            Surroundings = new Surroundings(0.3, 0.3, 0.1, [], Illuminant.D65, false),
            Lens = Lens.Focused(new Vec3(0, -6, 4), new Vec3(0, 0, -0.4), 0.55, 0),
        };
        var size = new PictureSize(64, 48);
        Picture Draw(int samples, uint seed, bool denoise) => PathTracer.Render(
            scene, size, new RenderSettings { MaxSamples = samples, Seed = seed, Denoise = denoise, KeepGuides = true }, null, TestContext.Current.CancellationToken);
        Picture truth = Draw(1024, 7, false), raw = Draw(32, 1, false), shown = Draw(32, 1, true);
        var isGround = Enumerable.Range(0, size.Count).Select(i => truth.Colour[3 * i] == 0 && truth.Colour[3 * i + 1] == 0).ToArray();

        // Over white paper: what is seen of a premultiplied colour is c + (1 - a).
        double Seen(Picture of, int i) => of.Colour[3 * i + 1] + 1 - of.Alpha[i];
        double Off(Picture of, bool ground) => Math.Sqrt(Enumerable.Range(0, size.Count).Where(i => isGround[i] == ground).Average(i => Math.Pow(Seen(of, i) - Seen(truth, i), 2)));

        // The truth's own noise, about 0.01, is in both.
        Assert.InRange(Off(shown, true), 0, 0.65 * Off(raw, true));
        Assert.InRange(Off(shown, true), 0, 0.02);

        // A pixel that is part ball, part ground is as true as it was.
        double Normal(int i) => Enumerable.Range(0, 3).Sum(c => truth.Guides!.Normal[3 * i + c] * truth.Guides.Normal[3 * i + c]);
        var edge = Enumerable.Range(0, size.Count).Where(i => Normal(i) is > 0 and < 0.9).ToList();
        Assert.NotEmpty(edge);
        double AtEdge(Picture of) => Math.Sqrt(edge.Average(i => Math.Pow(Seen(of, i) - Seen(truth, i), 2)));
        Assert.InRange(AtEdge(shown), 0, 1.1 * AtEdge(raw) + 0.005);
    }
}
