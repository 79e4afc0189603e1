namespace Linewright.Studio.Serving;

/// <summary>Lets long computations in one at a time, and quick ones beside them, so that two clients do not starve each other.</summary>
internal sealed class WorkQueue : IDisposable
{
    private readonly SemaphoreSlim longOnes = new(1, 1);
    private readonly SemaphoreSlim quickOnes = new(2, 2);
    private int running;

    /// <summary>How many computations run at this moment.</summary>
    public int Running => Volatile.Read(ref running);

    /// <summary>Seconds; meshing and checking the largest line takes a tenth of this on two processors.</summary>
    public static TimeSpan LongTime { get; } = TimeSpan.FromSeconds(180);

    /// <summary>A preview that takes longer is of no use to a hand on a control.</summary>
    public static TimeSpan QuickTime { get; } = TimeSpan.FromSeconds(20);

    /// <summary>Waits for its turn, then runs until done, stopped or out of time.</summary>
    public Task<T> LongAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken stop) => LongAsync(LongTime, work, stop);

    /// <summary>The same with another limit: for work that says itself how much it is.</summary>
    public Task<T> LongAsync<T>(TimeSpan limit, Func<CancellationToken, Task<T>> work, CancellationToken stop) => RunAsync(longOnes, limit, work, stop);

    /// <summary>The same for work of a fraction of a second.</summary>
    public Task<T> QuickAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken stop) => RunAsync(quickOnes, QuickTime, work, stop);

    /// <inheritdoc/>
    public void Dispose()
    {
        longOnes.Dispose();
        quickOnes.Dispose();
    }

    private async Task<T> RunAsync<T>(SemaphoreSlim turn, TimeSpan limit, Func<CancellationToken, Task<T>> work, CancellationToken stop)
    {
        await turn.WaitAsync(stop).ConfigureAwait(false);
        Interlocked.Increment(ref running);
        try
        {
            using var clock = CancellationTokenSource.CreateLinkedTokenSource(stop);
            clock.CancelAfter(limit);
            return await Task.Run(() => work(clock.Token), clock.Token).ConfigureAwait(false);
        }
        finally
        {
            Interlocked.Decrement(ref running);
            turn.Release();
        }
    }
}
