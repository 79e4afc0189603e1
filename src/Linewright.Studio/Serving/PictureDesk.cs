using Linewright.Assembly;
using Linewright.Delivery;
using Linewright.Pictures.Images;
using Linewright.Staging;
using Linewright.Studio.Pieces;

namespace Linewright.Studio.Serving;

/// <summary>Where pictures are taken: one at a time, behind everything that the bench computes.</summary>
/// <remarks>
/// The rules. A new order takes the place of the last one: a picture still being drawn is stopped first. One that nobody watches and
/// nobody asks after, since its page was closed, is stopped too. The last picture is kept until the next order, and no other:
/// memory is bounded by its largest size.
/// </remarks>
internal sealed class PictureDesk(BackThreads back) : IDisposable
{
    private readonly SemaphoreSlim turn = new(1, 1);
    private PictureJob? job;
    private Task running = Task.CompletedTask;
    private (SolvedPiece Piece, Photographer Photographer)? known;

    /// <summary>How long a picture is drawn on with nobody there. A page that is loaded again is back within this.</summary>
    public TimeSpan Patience { get; set; } = TimeSpan.FromSeconds(20);

    /// <summary>The picture on the desk, null before the first order.</summary>
    public PictureJob? Latest => job;

    /// <summary>The picture with a key; null where it made room for a newer one.</summary>
    public PictureJob? Find(string key) => job is { } there && there.Key == key ? there : null;

    /// <summary>Begins a picture, once the one before it has let go.</summary>
    public async Task<PictureJob> BeginAsync(SolvedPiece piece, PictureOrder order, CancellationToken stop)
    {
        await turn.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            job?.Cancel();
            await running.WaitAsync(stop).ConfigureAwait(false);
            var next = new PictureJob(order, FileStem.Of(piece.Brief.Name));
            job = next;
            running = Task.Run(() => RunAsync(next, piece), CancellationToken.None);
            return next;
        }
        finally
        {
            turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        job?.Cancel();
        turn.Dispose();
    }

    private async Task RunAsync(PictureJob now, SolvedPiece piece)
    {
        using var ended = new CancellationTokenSource();
        var leaving = LeaveAsync(now, ended.Token);
        try
        {
            // Not in the queue: the bench has mostly meshed the piece already, and its checks would be waited for.
            var model = await piece.ModelAsync(now, now.Stop).ConfigureAwait(false);
            now.Done(await Task.Factory.StartNew(() => Take(now, piece, model), now.Stop, TaskCreationOptions.DenyChildAttach, back).ConfigureAwait(false));
        }
        catch (OperationCanceledException) when (now.Stop.IsCancellationRequested)
        {
            now.Stopped();
        }
#pragma warning disable CA1031 // Nobody waits for this task: whatever went wrong is told to who watches the picture.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            now.Failed(fault.Message.ReplaceLineEndings(" "));
        }

        // What it was drawn with, a gigabyte of sums and early looks, is nobody's now. Left alone the collector clears it away some day and
        // keeps the room; asked in earnest it gives the room back to the machine.
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        await ended.CancelAsync().ConfigureAwait(false);
        await leaving.ConfigureAwait(false);
    }

    private Picture Take(PictureJob now, SolvedPiece piece, PieceModel model)
    {
        if (known?.Piece != piece)
        {
            known = (piece, new Photographer(model));
        }

        now.Report($"Laying the line {PictureWords.Of(now.Order.Stage.Scene)}");
        known.Value.Photographer.Stage(now.Order.Stage, now.Stop);
        now.Draw();
        return known.Value.Photographer.Take(now.Order, now, now.Stop);
    }

    // Ends a picture whose page was closed.
    private async Task LeaveAsync(PictureJob now, CancellationToken ended)
    {
        while (!ended.IsCancellationRequested)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(250), ended).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (now.IsForgotten(Patience))
            {
                now.Cancel();
                return;
            }
        }
    }
}
