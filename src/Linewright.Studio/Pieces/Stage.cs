namespace Linewright.Studio.Pieces;

/// <summary>A value that is computed at most once, on a thread of the pool; whoever waits for it may stop waiting.</summary>
#pragma warning disable CA1001 // A SemaphoreSlim whose wait handle is never asked for holds nothing to dispose of.
internal sealed class Stage<T>
#pragma warning restore CA1001
    where T : notnull
{
    private readonly SemaphoreSlim gate = new(1, 1);
    private T? value;
    private volatile bool isThere;

    /// <summary>True where it has been computed.</summary>
    public bool IsThere => isThere;

    /// <summary>The value, computed now where nobody has.</summary>
    public async Task<T> GetAsync(Func<T> compute, CancellationToken stop)
    {
        await gate.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            if (!isThere)
            {
                value = await Task.Run(compute, stop).ConfigureAwait(false);
                isThere = true;
            }

            return value!;
        }
        finally
        {
            gate.Release();
        }
    }
}
