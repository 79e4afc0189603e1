using System.Text;

namespace Linewright.Cli;

/// <summary>Standard error: where nobody can hear a message, it is lost and nothing else.</summary>
internal sealed class MessageWriter(TextWriter inner) : TextWriter
{
    /// <summary>A writer that stands before another; closing it leaves the other open.</summary>
    public static TextWriter Around(TextWriter inner) => new MessageWriter(inner);

    /// <inheritdoc/>
    public override Encoding Encoding => inner.Encoding;

    /// <inheritdoc/>
    public override void Write(char value) => Try(() => inner.Write(value));

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Try(() => inner.Write(buffer, index, count));

    /// <inheritdoc/>
    public override void Write(string? value) => Try(() => inner.Write(value));

    /// <inheritdoc/>
    public override void WriteLine(string? value) => Try(() => inner.WriteLine(value));

    /// <inheritdoc/>
    public override void Flush() => Try(inner.Flush);

    private static void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException)
        {
            return;
        }
    }
}
