using Linewright.Pictures.Gpu;
using Linewright.Pictures.Images;
using Linewright.Pictures.Rays;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;
using static System.FormattableString;

namespace Linewright.Tests.Pictures;

public class GpuTests
{
    [Fact]
    public void The_cards_program_draws_what_the_processor_draws()
    {
        // The card's program, run on the processor by the same compiler: its own trees, its own loops over planes.
        var scene = Pieces();
        var size = new PictureSize(30, 20);
        var settings = new RenderSettings { MaxSamples = 64, Denoise = false, KeepGuides = true };
        var here = PathTracer.Render(scene, size, settings, null, TestContext.Current.CancellationToken);
        using var card = GpuEngine.Emulated();
        var there = PathTracer.Render(scene, size, settings with { Engine = card }, null, TestContext.Current.CancellationToken);

        // What is seen first is the same in all but a few pixels on an edge; light agrees within its spread.
        var same = here.Guides!.Facet.Zip(there.Guides!.Facet, (a, b) => a == b).Count(b => b);
        Assert.True(same > 0.98 * size.Count, Invariant($"{same} of {size.Count} pixels show the same facet first"));
        var (outliers, bias) = (0, 0.0);
        for (var i = 0; i < size.Count; i++)
        {
            var difference = there.Colour[3 * i + 1] - here.Colour[3 * i + 1];
            var spread = Math.Sqrt(here.Guides.Variance[i] + there.Guides.Variance[i]) + 1e-3;
            outliers += Math.Abs(difference) > 4 * spread ? 1 : 0;
            bias += difference;
        }

        Assert.True(outliers <= 0.01 * size.Count, Invariant($"{outliers} pixels lie outside four standard errors"));
        var error = Math.Sqrt(here.Guides.Variance.Zip(there.Guides.Variance, (a, b) => (double)a + b).Sum());
        Assert.InRange(bias, -3 * error, 3 * error);
    }

    [Fact]
    public void Many_lanes_at_a_pixel_gather_what_one_lane_does()
    {
        // Sums of whole numbers are exact, so that any sample in the wrong half or guide shows.
        for (var split = 1; split < 40; split++)
        {
            PixelSums alone = default, first = default, second = new PixelSums { Count = split };
            for (var i = 0; i < 40; i++)
            {
                var sample = new SampleOutcome
                {
                    Colour = new Float3(i, 2 * i, 7),
                    Alpha = i & 1,
                    Depth = 3 * i,
                    Albedo = new Float3(1, i, 2),
                    Normal = new Float3(i, 0, -i),
                    Facet = i % 3 == 0 ? 100 + i : 7,
                    Blur = 2 * i,
                };
                alone.Add(sample);
                (i < split ? ref first : ref second).Add(sample);
            }

            first.Join(second);
            Assert.Equal(alone.Squares, first.Squares, 1e-6f * alone.Squares);
            first.Squares = alone.Squares;

            // By how much the commonest surface leads depends on the order in which votes fall; which it is does not.
            first.Lead = alone.Lead;
            Assert.Equal(alone, first);
        }
    }

    [Fact]
    public void A_pass_shared_out_to_many_lanes_draws_the_same_picture()
    {
        // One to sixteen samples a task: the same samples, summed in another order, so equal but for the last digits.
        var size = new PictureSize(30, 20);
        var settings = new RenderSettings { MaxSamples = 40, Denoise = false, KeepGuides = true };
        using var whole = GpuEngine.Emulated(1);
        using var split = GpuEngine.Emulated(int.MaxValue);
        var one = PathTracer.Render(Pieces(), size, settings with { Engine = whole }, null, TestContext.Current.CancellationToken);
        var many = PathTracer.Render(Pieces(), size, settings with { Engine = split }, null, TestContext.Current.CancellationToken);
        Assert.Equal(40, many.Noise.MeanSamples);
        for (var i = 0; i < size.Count; i++)
        {
            // Where no surface was seen by half of the samples, which one leads depends on the order in which they were counted.
            var normal = Enumerable.Range(3 * i, 3).Sum(k => one.Guides!.Normal[k] * one.Guides.Normal[k]);
            Assert.True(one.Guides!.Facet[i] == many.Guides!.Facet[i] || normal < 0.98f);
        }

        Assert.Equal(one.Guides!.Depth, many.Guides!.Depth, (a, b) => Close(a, b));
        Assert.Equal(one.Guides.Normal, many.Guides.Normal, (a, b) => Close(a, b));
        Assert.Equal(one.Colour, many.Colour, (a, b) => Close(a, b));

        // And again: which lane took which task leaves no trace.
        var again = PathTracer.Render(Pieces(), size, settings with { Engine = split }, null, TestContext.Current.CancellationToken);
        Assert.Equal(many.Colour, again.Colour);
        Assert.Equal(many.Guides.Variance, again.Guides!.Variance);
        static bool Close(float a, float b) => Math.Abs(a - b) <= 3e-6f * (1 + Math.Abs(a) + Math.Abs(b));
    }

    private static Scene Pieces() => TestScenes.Furnace.WithStone(StoneMaterial.Named("diamond")) with
    {
        Ground = Ground.Of(GroundKind.Cloth, -1),
        Shapes = [TestScenes.Ball(24, 0.5), TestScenes.Ball(6, 0.3)],
        Metals =
        [
            new MetalInstance(0, Pose.Move(1.4, 0, -0.5), ConductorFinish.Polished(MetalTable.Element("Au"))),
            new MetalInstance(1, Pose.Move(-1.3, 0.2, -0.6), ConductorFinish.Polished(MetalTable.Element("Pt"))),
            new MetalInstance(1, Pose.Move(-1.3, -0.6, -0.6), ConductorFinish.Polished(MetalTable.Element("Ag"))),
        ],
        Lights = [AreaLight.Facing(new Vec3(-2, -2, 4), Vec3.Zero, 2, 1, 5000, 6)],
        Surroundings = new Surroundings(0.8, 0.3, 0.2, [], Illuminant.D65),
        Lens = Lens.Focused(new Vec3(0, -6, 3), Vec3.Zero, 0.5, 0.05),
    };
}
