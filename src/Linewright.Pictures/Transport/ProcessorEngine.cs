using Linewright.Pictures.Images;

namespace Linewright.Pictures.Transport;

/// <summary>Samples on the processor, tile by tile.</summary>
internal sealed class ProcessorEngine : PictureEngine
{
    public override string Name => "processor";

    internal override ISampler Begin(CompiledScene scene, PictureSize size, RenderSettings settings) => new Sampler(scene, size, settings);

    private sealed class Sampler(CompiledScene scene, PictureSize size, RenderSettings settings) : ISampler
    {
        private const int TileSide = 16;

        private readonly int across = (size.Width + TileSide - 1) / TileSide;
        private readonly int down = (size.Height + TileSide - 1) / TileSide;

        public long Pass(ushort[] wanted, PixelSums[] pixels, CancellationToken stop)
        {
            var world = scene.World;
            var record = scene.Record;
            long taken = 0;
            Parallel.For(
                0,
                across * down,
                settings.Work(stop),
                () => 0L,
                (tile, _, sum) => sum + Tile(world, record, tile, wanted, pixels),
                sum => Interlocked.Add(ref taken, sum));
            GC.KeepAlive(scene);
            return taken;
        }

        public void Dispose()
        {
            // What it reads belongs to the scene.
        }

        private long Tile(ProcessorWorld world, in SceneRecord record, int tile, ushort[] wanted, PixelSums[] pixels)
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
                        pixels[at].Add(LightPath.Trace(ref world, record, x, y, (uint)pixels[at].Count));
                        taken++;
                    }
                }
            }

            return taken;
        }
    }
}
