namespace Linewright.Pictures.Denoising;

/// <summary>A picture at one of the sizes at which it is filtered: what is in it, who is kin, and what the filter makes of it.</summary>
/// <remarks>
/// Noise as wide as the filter looks passes through it as blotches. Four pixels in one have half the noise and the filter looks twice
/// as far at them, so where light changes slowly the coarser size knows the mean of four pixels better than the finer one,
/// which keeps what differs among the four. Elsewhere, on facets and polished metal, detail is finer than four pixels and nothing is
/// taken from the coarser size: tried there, it smeared stones to more than twice their error.
/// Sources: Burt and Adelson (1983), The Laplacian pyramid as a compact image code; for noise of samples, Delbracio and others
/// (2014), Boosting Monte Carlo rendering by ray histogram fusion. From memory.
/// </remarks>
internal sealed class FilterLevel
{
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="pixel">Reads a pixel; called from several threads.</param>
    /// <param name="kin">Of the picture at its full size.</param>
    /// <param name="keys">Keys at this size.</param>
    /// <param name="colour">Receives red, green, blue.</param>
    /// <param name="alpha">Receives how much is covered; null where all is.</param>
    public FilterLevel(int width, int height, Func<int, int, FilterPixel> pixel, KinMap kin, int[] keys, float[] colour, float[]? alpha)
        => (Width, Height, Pixel, Kin, Keys, Colour, Alpha) = (width, height, pixel, kin, keys, colour, alpha);

    public int Width { get; }

    public int Height { get; }

    /// <summary>Reads a pixel.</summary>
    public Func<int, int, FilterPixel> Pixel { get; }

    /// <summary>Who is kin in the picture at its full size, and what its ground is like.</summary>
    public KinMap Kin { get; }

    /// <summary>Keys at this size, row by row.</summary>
    public int[] Keys { get; }

    /// <summary>Red, green, blue, filtered.</summary>
    public float[] Colour { get; }

    /// <summary>How much is covered, filtered with the weights of grey; null where all is.</summary>
    public float[]? Alpha { get; }

    /// <summary>Every four pixels in one: the mean of those where light changes slowly; where there are none, nothing.</summary>
    public FilterLevel Halve(ParallelOptions loop)
    {
        int width = (Width + 1) / 2, height = (Height + 1) / 2;
        var pixels = new FilterPixel[width * height];
        var keys = new int[pixels.Length];
        Parallel.For(0, height, loop, y =>
        {
            for (var at = y * width; at < (y + 1) * width; at++)
            {
                ref var sum = ref pixels[at];
                sum.IsMatte = true;
                var count = 0;
                for (var k = 0; k < 4; k++)
                {
                    if (Fine(at - y * width, y, k) is var from && from >= 0)
                    {
                        var p = Pixel(from % Width, from / Width);
                        sum.Add(p);
                        sum.IsMatte &= KinMap.IsGround(p);
                        sum.Facet = p.Facet;
                        count++;
                    }
                }

                sum.Share(Math.Max(1, count));
                keys[at] = count > 0 ? KinMap.Smooth : KinMap.Outside;
            }
        });
        return new FilterLevel(
            width, height, (x, y) => pixels[y * width + x], Kin, keys, new float[3 * pixels.Length], Alpha is null ? null : new float[pixels.Length]);
    }

    /// <summary>Takes over what a coarser size says about the mean of every four pixels.</summary>
    public void Learn(FilterLevel coarse, ParallelOptions loop)
    {
        Learn(coarse, Colour, coarse.Colour, 3, loop);
        if (Alpha is not null)
        {
            Learn(coarse, Alpha, coarse.Alpha!, 1, loop);
        }
    }

    private void Learn(FilterLevel coarse, float[] fine, float[] said, int channels, ParallelOptions loop)
    {
        // By how much the coarser size differs from the mean of this one.
        var step = new float[said.Length];
        Parallel.For(0, coarse.Height, loop, y =>
        {
            for (var at = y * coarse.Width; at < (y + 1) * coarse.Width; at++)
            {
                if (coarse.IsSmooth(at))
                {
                    Differ(said, fine, step, channels, at, coarse.Width);
                }
            }
        });
        Parallel.For(0, Height, loop, y =>
        {
            for (var x = 0; x < Width; x++)
            {
                if (IsSmooth(y * Width + x))
                {
                    Spread(coarse, step, fine.AsSpan(channels * (y * Width + x), channels), x, y);
                }
            }
        });
    }

    /// <summary>What is said of a coarser pixel, less the mean of those that it was made of.</summary>
    private void Differ(float[] said, float[] fine, float[] step, int channels, int at, int across)
    {
        var count = 0;
        for (var k = 0; k < 4; k++)
        {
            if (Fine(at % across, at / across, k) is var from && from >= 0)
            {
                for (var c = 0; c < channels; c++)
                {
                    step[channels * at + c] -= fine[channels * from + c];
                }

                count++;
            }
        }

        for (var c = 0; c < channels; c++)
        {
            step[channels * at + c] = said[channels * at + c] + step[channels * at + c] / count;
        }
    }

    /// <summary>Adds to a pixel what the four coarser ones about it say, the nearest most.</summary>
    private static void Spread(FilterLevel coarse, float[] step, Span<float> pixel, int x, int y)
    {
        int left = (x - 1) >> 1, top = (y - 1) >> 1;
        Span<float> sum = stackalloc float[pixel.Length];
        var all = 0f;
        for (var k = 0; k < 4; k++)
        {
            int u = left + (k & 1), v = top + (k >> 1);
            if (u >= 0 && u < coarse.Width && v >= 0 && v < coarse.Height && coarse.IsSmooth(v * coarse.Width + u))
            {
                var weight = (u == x >> 1 ? 0.75f : 0.25f) * (v == y >> 1 ? 0.75f : 0.25f);
                all += weight;
                for (var c = 0; c < pixel.Length; c++)
                {
                    sum[c] += weight * step[pixel.Length * (v * coarse.Width + u) + c];
                }
            }
        }

        // The coarser pixel over this one is smooth as well, so there is always one.
        for (var c = 0; c < pixel.Length; c++)
        {
            pixel[c] += sum[c] / all;
        }
    }

    private bool IsSmooth(int at) => Keys[at] == KinMap.Smooth;

    /// <summary>One of the four pixels that make one at half the size; -1 where it is not smooth or not there.</summary>
    private int Fine(int x, int y, int k)
    {
        int u = 2 * x + (k & 1), v = 2 * y + (k >> 1), at = v * Width + u;
        return u < Width && v < Height && IsSmooth(at) ? at : -1;
    }
}
