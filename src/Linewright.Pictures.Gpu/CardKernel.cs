using ILGPU;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>What every lane of the card does.</summary>
internal static class CardKernel
{
    /// <summary>
    /// Turns inside a stone that a lane makes while those that look for the next thing do so: near enough as long a wait for both.
    /// Measured: with 4 the card takes a fifth more samples than with 1, a tenth more than with 2.
    /// </summary>
    private const int Turns = 4;

    /// <summary>Takes tasks off the list until it is empty, each task's sums into its own place.</summary>
    /// <remarks>Which lane takes which is chance; a task's sums are the same whoever takes it.</remarks>
    public static void Take(CardWorld world, SceneRecord scene, ArrayView<CardTask> tasks, int count, ArrayView<int> next, ArrayView<PixelSums> sums)
    {
        var at = -1;
        var task = default(CardTask);
        var number = 0;
        var walk = default(Walk);
        var goesOn = false;
        while (true)
        {
            // A few turns inside a stone or one thing outside: a lane whose sample ends begins the next at once.
            if (!goesOn)
            {
                if (number == task.End)
                {
                    at = Atomic.Add(ref next[0], 1);
                    if (at >= count)
                    {
                        return;
                    }

                    task = tasks[at];
                    number = task.First;
                    sums[at] = new PixelSums { Count = number };
                }

                walk = LightPath.Begin(ref world, scene, task.Pixel % scene.Camera.Width, task.Pixel / scene.Camera.Width, (uint)number);
            }

            goesOn = LightPath.Step(ref world, scene, ref walk, Turns);
            if (!goesOn)
            {
                // Kept in memory, not in the lane: a lane has few registers, and a sample ends seldom.
                sums[at].Add(LightPath.Finish(ref world, walk));
                number++;
            }
        }
    }

    /// <summary>Adds the sums of a pixel's tasks to the pixel, in their order, so that they round the same way each time.</summary>
    public static void Join(Index1D lane, ArrayView<CardTask> tasks, int count, ArrayView<PixelSums> sums, ArrayView<PixelSums> pixels)
    {
        var pixel = tasks[lane].Pixel;
        if (lane > 0 && tasks[lane - 1].Pixel == pixel)
        {
            // The lane of the pixel's first task does it.
            return;
        }

        var all = pixels[pixel];
        for (int i = lane; i < count && tasks[i].Pixel == pixel; i++)
        {
            all.Join(sums[i]);
        }

        pixels[pixel] = all;
    }
}
