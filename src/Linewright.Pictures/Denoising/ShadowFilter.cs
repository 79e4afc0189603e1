namespace Linewright.Pictures.Denoising;

/// <summary>Evens out the shadow on a ground that is left out of the picture: what is kept of it is its share of blocked light, one yes or no a sample.</summary>
/// <remarks>
/// A Gaussian over neighbours that show ground as well, so that no shadow bleeds into a body. Finer detail than its width is lost;
/// shadows of lamps of some size have none away from the place of contact.
/// </remarks>
internal static class ShadowFilter
{
    private const int Radius = 12;

    /// <summary>Pixels. Assumed: takes the noise of good quality under one step in a hundred.</summary>
    private const double Width = 5;

    /// <summary>Replaces the alpha of ground pixels by the mean of theirs about them.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="isGround">Whether the pixel with that number shows nothing but ground.</param>
    /// <param name="alpha">One number a pixel, 0 to 1; changed in place.</param>
    /// <param name="loop">Whose threads, how many; stops between rows.</param>
    public static void Run(int width, int height, Func<int, bool> isGround, float[] alpha, ParallelOptions loop)
    {
        var weights = Enumerable.Range(0, Radius + 1).Select(i => (float)Math.Exp(-0.5 * i * i / (Width * Width))).ToArray();
        Pass(width, height, 1, weights, isGround, alpha, loop);
        Pass(width, height, width, weights, isGround, alpha, loop);
    }

    // Along one axis: a Gaussian is the product of two.
    private static void Pass(int width, int height, int step, float[] weights, Func<int, bool> isGround, float[] alpha, ParallelOptions loop)
    {
        var before = (float[])alpha.Clone();
        Parallel.For(0, height, loop, y =>
        {
            for (var x = 0; x < width; x++)
            {
                var at = y * width + x;
                if (!isGround(at))
                {
                    continue;
                }

                int place = step == 1 ? x : y, end = step == 1 ? width : height;
                float sum = 0, all = 0;
                for (var k = Math.Max(-Radius, -place); k <= Math.Min(Radius, end - 1 - place); k++)
                {
                    var there = at + k * step;
                    if (isGround(there))
                    {
                        sum += before[there] * weights[Math.Abs(k)];
                        all += weights[Math.Abs(k)];
                    }
                }

                alpha[at] = sum / all;
            }
        });
    }
}
