namespace Linewright.Cli;

/// <summary>Shows the stage at work on one line of the terminal, and clears it away; silent where nobody looks.</summary>
internal sealed class StageLine(TextWriter error, bool isShown) : IProgress<string>, IDisposable
{
    private const string ClearLine = "\r\u001b[K";

    private readonly Lock gate = new();
    private bool isDirty;

    /// <inheritdoc/>
    public void Report(string value)
    {
        if (!isShown)
        {
            return;
        }

        lock (gate)
        {
            error.Write(ClearLine + value);
            isDirty = true;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            if (isDirty)
            {
                error.Write(ClearLine);
                isDirty = false;
            }
        }
    }
}
