using System.Collections.Concurrent;
using System.Runtime.InteropServices;

namespace Linewright.Studio.Serving;

/// <summary>Threads that give way to all others: for work of minutes, while the bench keeps the processor.</summary>
/// <remarks>
/// They start with the first task and idle after the last. There is one more of them than a loop may keep busy, so that a look at a
/// growing picture is developed beside its drawing. On Linux the kernel does not hear a thread's priority, only its niceness.
/// Source: setpriority(2), Linux: PRIO_PROCESS with 0 sets the calling thread's.
/// </remarks>
internal sealed class BackThreads : TaskScheduler, IDisposable
{
    // A tenth of the processor that a usual thread gets beside it; all of it where nobody else wants it. Source: sched(7), weight 110 of 1024.
    private const int Nicer = 10;

    private const int Nicest = 19;

    [ThreadStatic]
    private static BackThreads? home;

    private readonly BlockingCollection<Task> waiting = [];
    private readonly Lazy<int> started;

    public BackThreads() => started = new Lazy<int>(Start);

    /// <inheritdoc/>
    public override int MaximumConcurrencyLevel => Environment.ProcessorCount;

    /// <inheritdoc/>
    public void Dispose() => waiting.CompleteAdding();

    /// <inheritdoc/>
    protected override void QueueTask(Task task)
    {
        _ = started.Value;
        waiting.Add(task);
    }

    /// <inheritdoc/>
    protected override bool TryExecuteTaskInline(Task task, bool taskWasPreviouslyQueued) => home == this && TryExecuteTask(task);

    /// <inheritdoc/>
    protected override IEnumerable<Task> GetScheduledTasks() => [.. waiting];

    private int Start()
    {
        var count = MaximumConcurrencyLevel + 1;
        for (var i = 0; i < count; i++)
        {
            new Thread(Work) { IsBackground = true, Name = "behind the bench", Priority = ThreadPriority.BelowNormal }.Start();
        }

        return count;
    }

    private void Work()
    {
        home = this;
        StepBack();

        // Not the queue's enumerator: while it waits it holds on to the last task, and with it to all that the task worked on.
        while (waiting.TryTake(out var task, Timeout.Infinite))
        {
            TryExecuteTask(task);
        }
    }

    private static void StepBack()
    {
        if (OperatingSystem.IsLinux())
        {
            // Refused, it draws as fast as it can: nothing else depends on it.
            _ = SetPriority(0, 0, Math.Min(Nicest, GetPriority(0, 0) + Nicer));
        }
    }

    [DllImport("libc", EntryPoint = "getpriority")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int GetPriority(int which, uint who);

    [DllImport("libc", EntryPoint = "setpriority")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetPriority(int which, uint who, int niceness);
}
