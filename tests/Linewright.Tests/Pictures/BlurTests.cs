using Linewright.Pictures.Denoising;

namespace Linewright.Tests.Pictures;

public class BlurTests
{
    private const int Width = 48, Height = 40;

    [Fact]
    public void Where_the_lens_blurs_noise_goes_though_every_sample_saw_another_surface()
    {
        // Light that rises slowly to the right; guides are what a few samples happened to see.
        var random = new Random(3);
        float Noise() => (float)(random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5) * 0.2f;
        static float Truth(int x) => 0.4f + 0.004f * x;
        var pixels = Enumerable.Range(0, Width * Height).Select(i =>
        {
            float a = Truth(i % Width) + Noise(), b = Truth(i % Width) + Noise();
            (float, float, float) normal = (0.8f * (float)random.NextDouble() - 0.4f, 0.8f * (float)random.NextDouble() - 0.4f, 0.5f);
            var albedo = 0.5f + 0.4f * (float)random.NextDouble();
            return new FilterPixel { First = (a, a, a), Second = (b, b, b), Variance = 0.01f, Albedo = (albedo, albedo, albedo), Normal = normal, Facet = 2 + random.Next(40), Alpha = 1 };
        }).ToArray();
        var colour = Run(pixels);
        double Off(Func<int, float> of) => Math.Sqrt(Enumerable.Range(0, Width * Height).Average(i => Math.Pow(of(i) - Truth(i % Width), 2)));
        Assert.InRange(Off(i => (pixels[i].First.Red + pixels[i].Second.Red) / 2), 0.06, 0.08);
        Assert.InRange(Off(i => colour[3 * i]), 0, 0.015);
    }

    [Fact]
    public void An_edge_in_focus_stays_an_edge()
    {
        // Two facets, between them one column of pixels that show both; they must not take from far along it, nor it from them.
        var pixels = Enumerable.Range(0, Width * Height).Select(i =>
        {
            var x = i % Width;
            var value = x < 20 ? 0.2f : x > 20 ? 0.8f : 0.3f + 0.4f * (i / Width % 2);
            (float, float, float) normal = x < 20 ? (0, 0, 1) : x > 20 ? (0.6f, 0, 0.8f) : (0.3f, 0, 0.9f);
            return new FilterPixel { First = (value, value, value), Second = (value, value, value), Variance = 1e-4f, Albedo = (1, 1, 1), Normal = normal, Facet = x < 20 ? 5 : 6, Alpha = 1 };
        }).ToArray();
        var colour = Run(pixels);
        for (var i = 0; i < pixels.Length; i++)
        {
            Assert.Equal(pixels[i].First.Red, colour[3 * i], 0.02f);
        }
    }

    [Fact]
    public void What_is_covered_is_filtered_with_the_weights_of_its_colour()
    {
        // Premultiplied colour and alpha of one half-covered blur: their ratio is the body's own colour and must stay so.
        var random = new Random(9);
        var pixels = Enumerable.Range(0, Width * Height).Select(_ =>
        {
            var cover = 0.5f + 0.3f * (float)(random.NextDouble() - random.NextDouble());
            var value = 0.6f * cover;
            return new FilterPixel { First = (value, value, value), Second = (value, value, value), Variance = 0.01f, Albedo = (1, 1, 1), Normal = (0, 0, 0.5f), Facet = 2, Alpha = cover };
        }).ToArray();
        var alpha = new float[Width * Height];
        var colour = Run(pixels, alpha);
        for (var i = 0; i < alpha.Length; i++)
        {
            Assert.Equal(0.6f, colour[3 * i] / alpha[i], 1e-3f);
        }

        Assert.True(alpha.Max() - alpha.Min() < 0.5f * (pixels.Max(p => p.Alpha) - pixels.Min(p => p.Alpha)));
    }

    private static float[] Run(FilterPixel[] pixels, float[]? alpha = null)
    {
        var colour = new float[3 * Width * Height];
        JointFilter.Run(Width, Height, (x, y) => pixels[y * Width + x], colour, alpha, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken });
        return colour;
    }
}
