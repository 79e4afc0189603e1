using ILGPU;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>What every lane of the card does: some samples of one pixel.</summary>
internal static class CardKernel
{
    /// <summary>Takes at most <paramref name="most"/> of the samples that are wanted of a pixel, and strikes them off.</summary>
    public static void Take(Index1D lane, CardWorld world, SceneRecord scene, ArrayView<int> order, ArrayView<ushort> wanted, ArrayView<PixelSums> pixels, int most)
    {
        var at = order[lane];
        int x = at % scene.Camera.Width, y = at / scene.Camera.Width;
        int left = wanted[at];
        if (left == 0)
        {
            return;
        }

        var count = left < most ? left : most;
        var sums = pixels[at];
        var done = 0;
        var walk = LightPath.Begin(ref world, scene, x, y, (uint)sums.Count);
        while (done < count)
        {
            // One turn inside a stone or one thing outside: a lane whose sample ends begins the next at once.
            if (!LightPath.Step(ref world, scene, ref walk, 1))
            {
                sums.Add(LightPath.Finish(ref world, walk));
                done++;
                walk = LightPath.Begin(ref world, scene, x, y, (uint)sums.Count);
            }
        }

        pixels[at] = sums;
        wanted[at] = (ushort)(left - count);
    }
}
