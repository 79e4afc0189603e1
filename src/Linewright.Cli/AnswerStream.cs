namespace Linewright.Cli;

/// <summary>Standard output: where it is full or closed, the designer gets a sentence and not a fault of ours.</summary>
internal sealed class AnswerStream(Stream inner) : Stream
{
    /// <summary>A stream that answers for another; closing it leaves the other open.</summary>
    public static Stream Around(Stream inner) => new AnswerStream(inner);

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    /// <inheritdoc/>
    public override void Flush() => Try(inner.Flush);

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Try(() => inner.Write(buffer, offset, count));

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    private static void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException(ExitCode.Ours, $"standard output: cannot be written ({slip.Message.TrimEnd('.')}), expected a place for the answer");
        }
    }
}
