namespace Linewright.Cli;

/// <summary>A picture's file: it appears whole or not at all. Asked for before the drawing, so that a place that cannot be written is known at once.</summary>
internal sealed class PictureOutput : IDisposable
{
    private readonly string path;
    private readonly string part;
    private readonly Lock gate = new();
    private FileStream? stream;

    /// <summary>Opens the file beside its place.</summary>
    /// <exception cref="RefusalException">It cannot be written.</exception>
    public PictureOutput(string path)
    {
        this.path = path;
        part = path + ".part";
        if (Directory.Exists(path))
        {
            throw new RefusalException(ExitCode.Asked, $"{path}: read a folder, expected the name of a picture; add one that ends in .png");
        }

        try
        {
            stream = new FileStream(part, FileMode.Create, FileAccess.Write, FileShare.None);
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new RefusalException(ExitCode.Ours, $"{path}: cannot be written ({slip.Message.TrimEnd('.')}); choose another place with --out");
        }
    }

    /// <summary>Writes the picture and puts it in its place.</summary>
    /// <exception cref="RefusalException">The disk would not take it.</exception>
    public void Publish(Action<Stream> write, CancellationToken stop)
    {
        lock (gate)
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                write(stream!);
                stream!.Dispose();
                stream = null;
                File.Move(part, path, overwrite: true);
            }
            catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
            {
                throw new RefusalException(ExitCode.Ours, $"{path}: could not be written ({slip.Message.TrimEnd('.')}); nothing is there; make room, or choose another place with --out");
            }
        }
    }

    /// <summary>Takes away what was begun.</summary>
    public void Discard()
    {
        lock (gate)
        {
            stream?.Dispose();
            stream = null;
            try
            {
                File.Delete(part);
            }
            catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
            {
                return;
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Discard();
}
