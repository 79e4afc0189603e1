namespace Linewright.Pictures.Transport;

/// <summary>Takes the samples of one picture.</summary>
internal interface ISampler : IDisposable
{
    /// <summary>Adds to every pixel as many samples as are wanted of it.</summary>
    /// <returns>Samples taken.</returns>
    long Pass(ushort[] wanted, PixelSums[] pixels, CancellationToken stop);
}
