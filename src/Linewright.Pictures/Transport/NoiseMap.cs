using Linewright.Pictures.Images;

namespace Linewright.Pictures.Transport;

/// <summary>How noisy each tile is, and where the next samples help most.</summary>
internal sealed class NoiseMap
{
    /// <summary>Luminance added to a tile's mean before its error is divided by it.</summary>
    private const float Floor = 0.1f;

    /// <summary>A pass multiplies a pixel's samples by at most this, so that an early estimate cannot run away.</summary>
    private const int Growth = 2;

    private readonly PixelSums[] pixels;
    private readonly PictureSize size;
    private readonly int side;
    private readonly RenderSettings settings;

    /// <summary>Variance of one sample, pixel by pixel: what the neighbours of a pixel are asked for, apart from the sums, which are wide.</summary>
    private readonly float[] spread;

    /// <summary>Luminance, none below zero.</summary>
    private readonly float[] light;

    /// <param name="pixels">What is gathered; read anew by every call.</param>
    /// <param name="size">Of the picture.</param>
    /// <param name="side">Of a tile, pixels.</param>
    /// <param name="settings">Target, most samples, threads.</param>
    public NoiseMap(PixelSums[] pixels, PictureSize size, int side, RenderSettings settings)
    {
        (this.pixels, this.size, this.side, this.settings) = (pixels, size, side, settings);
        spread = new float[size.Count];
        light = new float[size.Count];
    }

    /// <summary>Relative root mean square error of each tile.</summary>
    public NoiseEstimate Measure()
    {
        int across = (size.Width + side - 1) / side, down = (size.Height + side - 1) / side;
        var tiles = new float[across * down];
        long samples = 0;
        Parallel.For(0, tiles.Length, settings.Work(), tile =>
        {
            float variances = 0, lights = 0;
            var count = 0;
            long taken = 0;
            for (var y = tile / across * side; y < Math.Min(size.Height, (tile / across + 1) * side); y++)
            {
                for (var x = tile % across * side; x < Math.Min(size.Width, (tile % across + 1) * side); x++)
                {
                    var at = y * size.Width + x;
                    ref var pixel = ref pixels[at];
                    var variance = pixel.Variance;
                    variances += variance;
                    spread[at] = variance * pixel.Count;
                    light[at] = MathF.Max(0, PixelSums.Luminance(pixel.Mean));
                    lights += light[at];
                    taken += pixel.Count;
                    count++;
                }
            }

            tiles[tile] = MathF.Sqrt(variances / count) / (lights / count + Floor);
            Interlocked.Add(ref samples, taken);
        });
        var squares = 0.0;
        foreach (var tile in tiles)
        {
            squares += tile * tile;
        }

        return new NoiseEstimate(side, across, [.. tiles], Math.Sqrt(squares / tiles.Length), samples / (double)pixels.Length);
    }

    /// <summary>Writes how many samples each pixel gets next; returns how many are still to come in all, as far as one can tell.</summary>
    /// <remarks>
    /// A tile's error is the mean of its pixels' squares, each falling with that pixel's samples: it reaches the target with the
    /// fewest samples in all where each pixel gets them by its spread. Source: Neyman (1934), On the two different aspects of
    /// the representative method.
    /// </remarks>
    /// <param name="noise">What <see cref="Measure"/> has just said.</param>
    /// <param name="wanted">One number a pixel.</param>
    public long Plan(NoiseEstimate noise, ushort[] wanted)
    {
        long left = 0;
        Parallel.For(
            0,
            noise.Tiles.Length,
            settings.Work(),
            () => (Left: 0L, Spreads: new float[side * side]),
            (tile, _, sum) =>
            {
                sum.Left += Plan(tile % noise.Across * side, tile / noise.Across * side, noise.Tiles[tile], sum.Spreads, wanted);
                return sum;
            },
            sum => Interlocked.Add(ref left, sum.Left));
        return left;
    }

    /// <summary>The same for one tile.</summary>
    private long Plan(int left, int top, float noise, float[] spreads, ushort[] wanted)
    {
        int right = Math.Min(left + side, size.Width), bottom = Math.Min(top + side, size.Height);
        var isNoisy = settings.NoiseTarget > 0 && noise > settings.NoiseTarget;
        var scale = isNoisy ? Spreads(left, right, top, bottom, spreads) / (settings.NoiseTarget * settings.NoiseTarget) : 0;
        long sum = 0;
        for (var y = top; y < bottom; y++)
        {
            for (var x = left; x < right; x++)
            {
                var at = y * size.Width + x;
                var count = pixels[at].Count;
                var asked = isNoisy ? scale * spreads[(y - top) * side + x - left] : settings.NoiseTarget > 0 ? 0 : settings.MaxSamples;
                var need = (int)Math.Clamp(asked, count, Math.Max(count, settings.MaxSamples));
                sum += need - count;
                wanted[at] = (ushort)Math.Min(need - count, Math.Min((Growth - 1) * count, ushort.MaxValue));
            }
        }

        return sum;
    }

    /// <summary>Writes the spread of a tile's pixels; returns their mean.</summary>
    private double Spreads(int left, int right, int top, int bottom, float[] spreads)
    {
        double sum = 0;
        for (var y = top; y < bottom; y++)
        {
            for (var x = left; x < right; x++)
            {
                sum += spreads[(y - top) * side + x - left] = Spread(x, y);
            }
        }

        return sum / ((right - left) * (bottom - top));
    }

    /// <summary>Standard deviation of one sample over the light, by the neighbours: one pixel's own spread is known badly.</summary>
    private float Spread(int x, int y)
    {
        float variances = 0, lights = 0;
        var counted = 0;
        int left = Math.Max(0, x - 2), right = Math.Min(size.Width - 1, x + 2);
        for (var yy = Math.Max(0, y - 2); yy <= Math.Min(size.Height - 1, y + 2); yy++)
        {
            for (var at = yy * size.Width + left; at <= yy * size.Width + right; at++)
            {
                variances += spread[at];
                lights += light[at];
                counted++;
            }
        }

        return MathF.Sqrt(variances / counted) / (lights / counted + Floor);
    }
}
