using ILGPU;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>What every lane of the card does: some samples of one pixel.</summary>
internal static class CardKernel
{
    // A group of 32 lanes looks at 8 by 4 pixels, so that its rays go much the same way.
    private const int BlockWidth = 8;
    private const int BlockHeight = 4;

    /// <summary>Lanes for a picture, with those that find no pixel.</summary>
    public static int Lanes(int width, int height)
        => (width + BlockWidth - 1) / BlockWidth * ((height + BlockHeight - 1) / BlockHeight) * (BlockWidth * BlockHeight);

    /// <summary>Takes at most <paramref name="most"/> of the samples that are wanted, and strikes them off.</summary>
    public static void Take(Index1D lane, CardWorld world, SceneRecord scene, ArrayView<ushort> wanted, ArrayView<PixelSums> pixels, int most)
    {
        var block = lane / (BlockWidth * BlockHeight);
        var within = lane % (BlockWidth * BlockHeight);
        var across = (scene.Camera.Width + BlockWidth - 1) / BlockWidth;
        var x = block % across * BlockWidth + within % BlockWidth;
        var y = block / across * BlockHeight + within / BlockWidth;
        if (x >= scene.Camera.Width || y >= scene.Camera.Height)
        {
            return;
        }

        var at = y * scene.Camera.Width + x;
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
