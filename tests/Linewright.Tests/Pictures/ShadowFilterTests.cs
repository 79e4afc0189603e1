using Linewright.Pictures.Denoising;

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

        ShadowFilter.Run(width, height, at => at % width < 30, alpha, new ParallelOptions());
        for (var i = 0; i < alpha.Length; i++)
        {
            var (low, high) = i % width >= 30 ? (1f, 1f) : (0.44f, 0.56f);
            Assert.InRange(alpha[i], low, high);
        }
    }
}
