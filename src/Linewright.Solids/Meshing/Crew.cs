using System.Collections.Concurrent;
using Linewright.Solids.Lanes;

namespace Linewright.Solids.Meshing;

/// <summary>The threads of one run, each with its own scratch memory. Work is handed out by index.</summary>
/// <remarks>A task must write only what belongs to its index, so that the result does not depend on the threads.</remarks>
internal sealed class Crew(int threads, CancellationToken stop)
{
    private readonly int threads = threads > 0 ? threads : Environment.ProcessorCount;
    private readonly ConcurrentBag<Arena> idle = [];

    /// <summary>Runs the task for every index below the count.</summary>
    /// <exception cref="OperationCanceledException">The run was asked to stop.</exception>
    public void Run(int count, Action<int, Arena> task)
    {
        if (threads == 1 || count == 1)
        {
            var arena = Borrow();
            for (var i = 0; i < count; i++)
            {
                stop.ThrowIfCancellationRequested();
                task(i, arena);
            }

            idle.Add(arena);
            return;
        }

        var options = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop };
        Parallel.For(
            0,
            count,
            options,
            Borrow,
            (i, _, arena) =>
            {
                task(i, arena);
                return arena;
            },
            idle.Add);
    }

    private Arena Borrow() => idle.TryTake(out var arena) ? arena : new Arena();
}
