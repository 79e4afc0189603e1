using ILGPU;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>Samples on a graphics card, by the processor's own source compiled for it.</summary>
/// <remarks>
/// Holds the card until disposed. A picture is taken in runs of a few samples a pixel, so that it can be stopped between
/// them. Rays meet the same surfaces as on the processor, rounded otherwise: pictures agree within their noise.
/// </remarks>
public sealed class GpuEngine : PictureEngine, IDisposable
{
    /// <summary>Samples of one run over all pixels. Assumed: keeps a run well under a second on a card, and the card full.</summary>
    private const long RunSamples = 32_000_000;

    /// <summary>Samples of one pixel in one run, so that a few hard pixels do not keep a run going.</summary>
    private const int MostOfAPixel = 64;

    private readonly Context context;
    private readonly Accelerator accelerator;
    private readonly Action<Index1D, CardWorld, SceneRecord, ArrayView<int>, ArrayView<ushort>, ArrayView<PixelSums>, int> take;

    private GpuEngine(Context context, Accelerator accelerator)
    {
        this.context = context;
        this.accelerator = accelerator;
        take = accelerator.LoadAutoGroupedStreamKernel<Index1D, CardWorld, SceneRecord, ArrayView<int>, ArrayView<ushort>, ArrayView<PixelSums>, int>(CardKernel.Take);
    }

    /// <inheritdoc/>
    public override string Name => accelerator.Name;

    /// <summary>The first card that answers.</summary>
    /// <param name="missing">Where there is none: why, in a sentence.</param>
    /// <returns>Null where there is none.</returns>
    public static GpuEngine? Find(out string missing)
    {
        Context? made = null;
        try
        {
            made = Context.Create(builder => builder.Cuda().Optimize(OptimizationLevel.O2).Math(MathMode.Fast32BitOnly));
            if (made.GetCudaDevices().Count > 0)
            {
                missing = "";
                return new GpuEngine(made, made.CreateCudaAccelerator(0));
            }

            missing = "no CUDA device answers on this machine";
        }
        catch (Exception slip) when (slip is CudaException or InternalCompilerException or NotSupportedException or DllNotFoundException or AcceleratorException)
        {
            missing = $"the CUDA device cannot be used: {slip.Message}";
        }

        made?.Dispose();
        return null;
    }

    /// <summary>The card's program run on the processor, slowly: to check it where there is no card.</summary>
    internal static GpuEngine Emulated()
    {
        var made = Context.Create(builder => builder.CPU().Optimize(OptimizationLevel.O2));
        return new GpuEngine(made, made.CreateCPUAccelerator(0));
    }

    /// <summary>Lets go of the card.</summary>
    public void Dispose()
    {
        accelerator.Dispose();
        context.Dispose();
    }

    internal override ISampler Begin(CompiledScene scene, PictureSize size, RenderSettings settings) => new Sampler(this, scene, size);

    private sealed class Sampler : ISampler
    {
        private readonly GpuEngine engine;
        private readonly CardScene scene;
        private readonly SceneRecord record;
        private readonly PictureSize size;
        private readonly int[] order;
        private readonly MemoryBuffer1D<int, Stride1D.Dense> orderThere;
        private readonly MemoryBuffer1D<ushort, Stride1D.Dense> wantedThere;
        private readonly MemoryBuffer1D<PixelSums, Stride1D.Dense> pixelsThere;

        public Sampler(GpuEngine engine, CompiledScene scene, PictureSize size)
        {
            this.engine = engine;
            this.size = size;
            this.scene = new CardScene(engine.accelerator, scene);
            record = scene.Record;
            order = new int[size.Count];
            orderThere = engine.accelerator.Allocate1D<int>(size.Count);
            wantedThere = engine.accelerator.Allocate1D<ushort>(size.Count);
            pixelsThere = engine.accelerator.Allocate1D<PixelSums>(size.Count);
            pixelsThere.MemSetToZero();
        }

        public long Pass(ushort[] wanted, PixelSums[] pixels, CancellationToken stop)
        {
            long taken = 0;
            foreach (var count in wanted)
            {
                taken += count;
            }

            wantedThere.CopyFromCPU(wanted);
            for (var done = 0; ;)
            {
                // Only pixels that want more get a lane: late passes want few.
                var lanes = CardOrder.Fill(order, size, wanted, done);
                if (lanes == 0)
                {
                    break;
                }

                stop.ThrowIfCancellationRequested();
                orderThere.View.SubView(0, lanes).CopyFromCPU(ref order[0], lanes);
                var most = (int)Math.Clamp(RunSamples / lanes, 1, MostOfAPixel);
                engine.take(lanes, scene.World, record, orderThere.View, wantedThere.View, pixelsThere.View, most);
                engine.accelerator.Synchronize();
                done += most;
            }

            pixelsThere.CopyToCPU(pixels);
            return taken;
        }

        public void Dispose()
        {
            pixelsThere.Dispose();
            orderThere.Dispose();
            wantedThere.Dispose();
            scene.Dispose();
        }
    }
}
