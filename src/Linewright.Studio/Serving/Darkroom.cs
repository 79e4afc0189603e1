using Linewright.Pictures.Images;
using Linewright.Staging;

namespace Linewright.Studio.Serving;

/// <summary>Develops pictures to look at and to keep, one at a time, behind the bench.</summary>
/// <remarks>A look costs at most so many pixels however large the picture, and the same look is developed once.</remarks>
internal sealed class Darkroom(BackThreads back) : IDisposable
{
    // A screen's: larger pictures are looked at as the mean of four or nine pixels.
    private const int LookPixels = 2_100_000;

    private readonly SemaphoreSlim turn = new(1, 1);
    private (string Key, int View, byte[] Png)? look;

    /// <summary>PNG to look at; null before there is anything to see.</summary>
    /// <param name="job">The picture.</param>
    /// <param name="isWhole">True for every pixel of it.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<byte[]?> LookAsync(PictureJob job, bool isWhole, CancellationToken stop) => InTurnAsync(job, () =>
    {
        // Taken here and not when it was asked for: the newest is what is wanted.
        var (picture, view) = job.Standing!.Value;
        if (!isWhole && look is { } kept && kept.Key == job.Key && kept.View == view)
        {
            return kept.Png;
        }

        var png = Written(stream => PictureFile.WriteView(stream, picture, isWhole ? int.MaxValue : LookPixels));
        look = isWhole ? look : (job.Key, view, png);
        return png;
    }, stop);

    /// <summary>Writes a file, byte for byte as the command line does, and hands it on as it is developed: it never lies here whole.</summary>
    /// <param name="picture">The picture as it stood when it was asked for.</param>
    /// <param name="name">Ends in .png or .pfm.</param>
    /// <param name="bits">8 or 16 for PNG.</param>
    /// <param name="file">Where to. May keep the writer waiting.</param>
    /// <param name="stop">Asks to stop: what is written to afterwards refuses.</param>
    /// <remarks>Not in turn: who takes long to fetch a file keeps no look waiting, and a second file at a time costs a megabyte or two.</remarks>
    public Task FileAsync(Picture picture, string name, int bits, Stream file, CancellationToken stop)
        => Task.Factory.StartNew(() => PictureFile.Write(file, name, picture, bits), stop, TaskCreationOptions.DenyChildAttach, back);

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private static byte[] Written(Action<Stream> write)
    {
        using var bytes = new MemoryStream();
        write(bytes);
        return bytes.ToArray();
    }

    private async Task<byte[]?> InTurnAsync(PictureJob job, Func<byte[]> develop, CancellationToken stop)
    {
        if (job.Standing is null)
        {
            return null;
        }

        await turn.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            return await Task.Factory.StartNew(develop, stop, TaskCreationOptions.DenyChildAttach, back).ConfigureAwait(false);
        }
        finally
        {
            turn.Release();
        }
    }
}
