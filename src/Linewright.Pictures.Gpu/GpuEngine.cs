using ILGPU;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;

namespace Linewright.Pictures.Gpu;

/// <summary>Samples on a graphics card, by the processor's own source compiled for it.</summary>
/// <remarks>
/// Holds the card until disposed. A pass is taken in runs, so that it can be stopped between them, and shared out to the lanes by
/// samples, not by pixels: a few pixels that want many keep the whole card busy. Rays meet the same surfaces as on the processor, rounded otherwise: pictures agree within their noise.
/// </remarks>
public sealed class GpuEngine : PictureEngine, IDisposable
{
    /// <summary>Lanes of a group. Measured.</summary>
    private const int GroupLanes = 128;

    /// <summary>Groups at work at once on one of the card's processors, which shares its registers out to them. Measured: best of 3 to 8.</summary>
    private const int Groups = 4;

    private readonly Context context;
    private readonly Accelerator accelerator;
    private readonly int plenty;
    private readonly KernelConfig lanes;
    private readonly Action<KernelConfig, CardWorld, SceneRecord, ArrayView<CardTask>, int, ArrayView<int>, ArrayView<PixelSums>> take;
    private readonly Action<Index1D, ArrayView<CardTask>, int, ArrayView<PixelSums>, ArrayView<PixelSums>> join;

    private GpuEngine(Context context, Accelerator accelerator, int plenty)
    {
        this.context = context;
        this.accelerator = accelerator;
        this.plenty = plenty;
        var group = Math.Min(GroupLanes, accelerator.MaxNumThreadsPerGroup);
        take = accelerator.LoadStreamKernel<CardWorld, SceneRecord, ArrayView<CardTask>, int, ArrayView<int>, ArrayView<PixelSums>>(
            CardKernel.Take, new KernelSpecialization(group, accelerator.AcceleratorType == AcceleratorType.Cuda ? Groups : null));
        join = accelerator.LoadAutoGroupedStreamKernel<Index1D, ArrayView<CardTask>, int, ArrayView<PixelSums>, ArrayView<PixelSums>>(CardKernel.Join);

        // As many as could be at work at once; those that find no room begin later, and find the tasks gone.
        lanes = new KernelConfig(accelerator.MaxNumThreads / group, group);
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
                return new GpuEngine(made, made.CreateCudaAccelerator(0), CardTasks.Plenty);
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
    /// <param name="plenty">Tasks that a pass is shared out to, if it has so many samples.</param>
    internal static GpuEngine Emulated(int plenty = CardTasks.Plenty)
    {
        var made = Context.Create(builder => builder.CPU().Optimize(OptimizationLevel.O2));
        return new GpuEngine(made, made.CreateCPUAccelerator(0), plenty);
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
        private readonly CardTasks shares;
        private readonly CardTask[] tasks;
        private readonly MemoryBuffer1D<CardTask, Stride1D.Dense> tasksThere;
        private readonly MemoryBuffer1D<int, Stride1D.Dense> nextThere;
        private readonly MemoryBuffer1D<PixelSums, Stride1D.Dense> sumsThere;
        private readonly MemoryBuffer1D<PixelSums, Stride1D.Dense> pixelsThere;

        public Sampler(GpuEngine engine, CompiledScene scene, PictureSize size)
        {
            this.engine = engine;
            this.scene = new CardScene(engine.accelerator, scene);
            record = scene.Record;
            shares = new CardTasks(size, engine.plenty);
            tasks = new CardTask[Math.Min(CardTasks.MostOfARun, 4 * size.Count)];
            tasksThere = engine.accelerator.Allocate1D<CardTask>(tasks.Length);
            nextThere = engine.accelerator.Allocate1D<int>(1);
            sumsThere = engine.accelerator.Allocate1D<PixelSums>(tasks.Length);
            pixelsThere = engine.accelerator.Allocate1D<PixelSums>(size.Count);
            pixelsThere.MemSetToZero();
        }

        public long Pass(ushort[] wanted, PixelSums[] pixels, CancellationToken stop)
        {
            var samples = shares.Begin(wanted, pixels);
            for (int count; (count = shares.Next(tasks)) > 0;)
            {
                // The copy waits for the run before; its tasks were shared out meanwhile.
                stop.ThrowIfCancellationRequested();
                tasksThere.View.SubView(0, count).CopyFromCPU(ref tasks[0], count);
                nextThere.MemSetToZero();
                engine.take(engine.lanes, scene.World, record, tasksThere.View, count, nextThere.View, sumsThere.View);
                engine.join(count, tasksThere.View, count, sumsThere.View, pixelsThere.View);
            }

            pixelsThere.CopyToCPU(pixels);
            return samples;
        }

        public void Dispose()
        {
            pixelsThere.Dispose();
            sumsThere.Dispose();
            nextThere.Dispose();
            tasksThere.Dispose();
            scene.Dispose();
        }
    }
}
