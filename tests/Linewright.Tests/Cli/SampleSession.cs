using Linewright.Cli;
using Linewright.Pictures.Images;
using Linewright.Staging;

namespace Linewright.Tests.Cli;

/// <summary>Draws an even grey at once.</summary>
internal sealed class SampleSession(Action<PictureOrder> drawing) : IPhotoSession
{
    public Picture Take(PictureOrder order, PictureStage stage, CancellationToken stop)
    {
        drawing(order);
        stop.ThrowIfCancellationRequested();
        var count = order.Stage.Size.Count;
        return new Picture(
            order.Stage.Size, [.. Enumerable.Repeat(0.5f, 3 * count)], [.. Enumerable.Repeat(1f, count)], new NoiseEstimate(16, 1, [0], 0.05, 12), null);
    }

    public void Dispose()
    {
        // Nothing is kept.
    }
}
