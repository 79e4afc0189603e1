using Linewright.Pictures.Images;

namespace Linewright.Pictures.Transport;

/// <summary>What takes the samples of a picture: the processor's cores and vector unit, or a graphics card.</summary>
/// <remarks>The kernel is one source for all; what it draws is the same within the noise.</remarks>
public abstract class PictureEngine
{
    private protected PictureEngine()
    {
    }

    /// <summary>All cores of this machine.</summary>
    public static PictureEngine Processor { get; } = new ProcessorEngine();

    /// <summary>What it runs on, for a person to read.</summary>
    public abstract string Name { get; }

    internal abstract ISampler Begin(CompiledScene scene, PictureSize size, RenderSettings settings);
}
