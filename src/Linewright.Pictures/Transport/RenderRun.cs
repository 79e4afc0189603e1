using Linewright.Pictures.Images;

namespace Linewright.Pictures.Transport;

/// <summary>One picture being drawn: passes over its tiles until the noise is low enough.</summary>
/// <remarks>
/// After every pass each pixel is told how many samples it gets in the next, from its own and its neighbours' spread; that
/// decision uses whole passes only, so it does not depend on the threads.
/// </remarks>
internal sealed class RenderRun
{
    private const int TileSide = 16;

    /// <summary>Samples of the first pass. Assumed: fewer do not show a pixel's spread.</summary>
    private const int FirstPass = 16;

    private readonly CompiledScene compiled;
    private readonly PictureSize size;
    private readonly RenderSettings settings;
    private readonly CancellationToken stop;
    private readonly PixelSums[] pixels;
    private readonly ushort[] wanted;
    private readonly int across;
    private readonly int down;
    private long samples;

    public RenderRun(CompiledScene compiled, PictureSize size, RenderSettings settings, CancellationToken stop)
    {
        this.compiled = compiled;
        this.size = size;
        this.settings = settings;
        this.stop = stop;
        pixels = new PixelSums[size.Count];
        wanted = new ushort[size.Count];
        across = (size.Width + TileSide - 1) / TileSide;
        down = (size.Height + TileSide - 1) / TileSide;
    }

    public Picture Draw(IProgress<PictureProgress>? progress)
    {
        wanted.AsSpan().Fill((ushort)Math.Min(FirstPass, settings.MaxSamples));
        var share = 0.0;
        for (var pass = 1; ; pass++)
        {
            Pass();
            var noise = NoiseMap.Measure(pixels, size, TileSide);
            var left = NoiseMap.Plan(pixels, size, TileSide, noise, settings, wanted);
            share = Math.Max(share, samples / (double)(samples + left));
            progress?.Report(new PictureProgress(share, pass, samples, noise.Overall, () => Finish(noise)));
            if (left == 0)
            {
                return Finish(noise);
            }
        }
    }

    private void Pass()
    {
        var world = compiled.World;
        var record = compiled.Record;
        long taken = 0;
        Parallel.For(
            0,
            across * down,
            new ParallelOptions { MaxDegreeOfParallelism = settings.Threads > 0 ? settings.Threads : -1, CancellationToken = stop },
            () => 0L,
            (tile, _, sum) => sum + Tile(world, record, tile),
            sum => Interlocked.Add(ref taken, sum));
        samples += taken;
        GC.KeepAlive(compiled);
    }

    private long Tile(ProcessorWorld world, in SceneRecord record, int tile)
    {
        int x0 = tile % across * TileSide, y0 = tile / across * TileSide;
        long taken = 0;
        for (var y = y0; y < Math.Min(y0 + TileSide, size.Height); y++)
        {
            for (var x = x0; x < Math.Min(x0 + TileSide, size.Width); x++)
            {
                var at = y * size.Width + x;
                for (int i = 0, count = wanted[at]; i < count; i++)
                {
                    pixels[at].Add(LightPath.Trace(world, record, x, y, (uint)pixels[at].Count));
                    taken++;
                }
            }
        }

        return taken;
    }

    private Picture Finish(NoiseEstimate noise)
    {
        var colour = new float[3 * size.Count];
        var alpha = new float[size.Count];
        for (var i = 0; i < size.Count; i++)
        {
            var mean = pixels[i].Mean;
            (colour[3 * i], colour[3 * i + 1], colour[3 * i + 2]) = (mean.X, mean.Y, mean.Z);
            alpha[i] = pixels[i].MeanAlpha;
        }

        return new Picture(size, colour, alpha, noise, null);
    }
}
