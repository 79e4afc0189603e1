namespace Linewright.Cli;

/// <summary>Ends a verb with a message for the designer and no trace.</summary>
internal sealed class RefusalException(int exitCode, string message) : Exception(message)
{
    /// <summary>One of <see cref="Cli.ExitCode"/>.</summary>
    public int ExitCode { get; } = exitCode;
}
