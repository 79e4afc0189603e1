using Linewright.Pictures.Images;

namespace Linewright.Pictures.Transport;

/// <summary>How noisy each tile is, and where the next samples help most.</summary>
internal static class NoiseMap
{
    /// <summary>Luminance added to a tile's mean before its error is divided by it.</summary>
    private const float Floor = 0.1f;

    /// <summary>A pass multiplies a pixel's samples by at most this, so that an early estimate cannot run away.</summary>
    private const int Growth = 2;

    /// <summary>Relative root mean square error of each tile.</summary>
    public static NoiseEstimate Measure(PixelSums[] pixels, PictureSize size, int side, RenderSettings settings)
    {
        int across = (size.Width + side - 1) / side, down = (size.Height + side - 1) / side;
        var tiles = new float[across * down];
        Parallel.For(0, tiles.Length, settings.Work(), tile =>
        {
            float variance = 0, light = 0;
            var count = 0;
            for (var y = tile / across * side; y < Math.Min(size.Height, (tile / across + 1) * side); y++)
            {
                for (var x = tile % across * side; x < Math.Min(size.Width, (tile % across + 1) * side); x++)
                {
                    ref var pixel = ref pixels[y * size.Width + x];
                    variance += pixel.Variance;
                    light += MathF.Max(0, PixelSums.Luminance(pixel.Mean));
                    count++;
                }
            }

            tiles[tile] = MathF.Sqrt(variance / count) / (light / count + Floor);
        });
        double squares = 0, samples = 0;
        foreach (var tile in tiles)
        {
            squares += tile * tile;
        }

        foreach (ref readonly var pixel in pixels.AsSpan())
        {
            samples += pixel.Count;
        }

        return new NoiseEstimate(side, across, [.. tiles], Math.Sqrt(squares / tiles.Length), samples / pixels.Length);
    }

    /// <summary>Writes how many samples each pixel gets next; returns how many are still to come in all, as far as one can tell.</summary>
    public static long Plan(PixelSums[] pixels, PictureSize size, int side, NoiseEstimate noise, RenderSettings settings, ushort[] wanted)
    {
        long left = 0;
        Parallel.For(
            0,
            size.Height,
            settings.Work(),
            () => 0L,
            (y, _, sum) =>
            {
                for (var x = 0; x < size.Width; x++)
                {
                    var at = y * size.Width + x;
                    var tile = noise.Tiles[y / side * noise.Across + x / side];
                    var need = Need(pixels, size, x, y, tile, settings);
                    var count = pixels[at].Count;
                    sum += need - count;
                    wanted[at] = (ushort)Math.Min(need - count, Math.Min((Growth - 1) * count, ushort.MaxValue));
                }

                return sum;
            },
            sum => Interlocked.Add(ref left, sum));
        return left;
    }

    /// <summary>Samples that bring a pixel under the target: error falls with their square root.</summary>
    private static int Need(PixelSums[] pixels, PictureSize size, int x, int y, float tile, RenderSettings settings)
    {
        var count = pixels[y * size.Width + x].Count;
        if (settings.NoiseTarget <= 0)
        {
            return settings.MaxSamples;
        }

        if (tile <= settings.NoiseTarget || count >= settings.MaxSamples)
        {
            return count;
        }

        // Mean over the neighbours: one pixel's spread is itself known badly.
        float variance = 0, light = 0;
        var counted = 0;
        for (var yy = Math.Max(0, y - 2); yy <= Math.Min(size.Height - 1, y + 2); yy++)
        {
            for (var xx = Math.Max(0, x - 2); xx <= Math.Min(size.Width - 1, x + 2); xx++)
            {
                ref var pixel = ref pixels[yy * size.Width + xx];
                variance += pixel.Variance * pixel.Count;
                light += MathF.Max(0, PixelSums.Luminance(pixel.Mean));
                counted++;
            }
        }

        var allowed = settings.NoiseTarget * (light / counted + Floor);
        var need = variance / counted / (allowed * allowed);
        return (int)Math.Clamp(need, count, settings.MaxSamples);
    }
}
