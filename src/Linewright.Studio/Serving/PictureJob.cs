using System.Diagnostics;
using System.Security.Cryptography;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;
using Linewright.Staging;
using Linewright.Studio.Wire;

namespace Linewright.Studio.Serving;

/// <summary>One picture from its order to its end: how far it is, what there is to see of it, and the wish to stop it. Safe from several threads.</summary>
/// <param name="order">What was ordered.</param>
/// <param name="stem">The beginning of its file's name.</param>
#pragma warning disable CA1001 // A token source without a timer holds nothing to dispose of, and whoever still holds the key may ask to stop.
internal sealed class PictureJob(PictureOrder order, string stem) : IProgress<string>, IProgress<PictureProgress>
#pragma warning restore CA1001
{
    // A copy of eight million pixels takes a tenth of a second: not after every one of the first, short passes.
    private static readonly TimeSpan BetweenViews = TimeSpan.FromSeconds(1);

    // Before a fiftieth is done, what is left is anybody's guess. The first pass is left out of it: it waits for compiled code.
    private const double ShareToGuessBy = 0.02;

    // What is left under a pass worth taking is left to the filter.
    private const double ShareOfTheFilter = 0.998;

    private readonly Lock gate = new();
    private readonly CancellationTokenSource stop = new();
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly Stopwatch drawing = new();
    private TaskCompletionSource change = New();
    private PictureStatus status = new(RandomNumberGenerator.GetHexString(32, lowercase: true), PictureState.Preparing, "", order, Name(order, stem, isDone: false));
    private PictureProgress? last;
    private Picture? picture;
    private TimeSpan drawnAtLast;
    private double shareAtFirst;
    private TimeSpan seen;
    private TimeSpan asked;
    private int listeners;

    /// <summary>Its name at the doors, which cannot be guessed.</summary>
    public string Key => status.Key;

    /// <summary>What was ordered.</summary>
    public PictureOrder Order => order;

    /// <summary>Asks to stop.</summary>
    public CancellationToken Stop => stop.Token;

    /// <summary>The picture as it stands and the number of this view; null before there is any.</summary>
    public (Picture Picture, int View)? Standing
    {
        get
        {
            lock (gate)
            {
                return picture is null ? null : (picture, status.View);
            }
        }
    }

    /// <summary>The name of a file of it: one that was stopped, or is not done, says so.</summary>
    public string FileName(string ending) => Path.GetFileNameWithoutExtension(Now().Status.FileName) + ending;

    /// <summary>How far it is, and what ends when that changes.</summary>
    public (PictureStatus Status, Task Change) Now()
    {
        lock (gate)
        {
            var gained = status.Share - shareAtFirst;
            double? left = status.State == PictureState.Drawing && drawing.IsRunning && gained >= ShareToGuessBy
                ? Math.Max(0, drawnAtLast.TotalSeconds * (1 - status.Share) / gained - (drawing.Elapsed - drawnAtLast).TotalSeconds)
                : null;
            return (status with { SpentS = clock.Elapsed.TotalSeconds, LeftS = left }, change.Task);
        }
    }

    /// <summary>Somebody has asked after it.</summary>
    public void Ask()
    {
        lock (gate)
        {
            asked = clock.Elapsed;
        }
    }

    /// <summary>Somebody watches it, until this is disposed of.</summary>
    public IDisposable Watch()
    {
        Interlocked.Increment(ref listeners);
        return new Watcher(this);
    }

    /// <summary>True where nobody watches it, and nobody has asked after it for so long.</summary>
    public bool IsForgotten(TimeSpan patience)
    {
        lock (gate)
        {
            return Volatile.Read(ref listeners) == 0 && clock.Elapsed - asked > patience;
        }
    }

    /// <summary>Asks it to stop.</summary>
    public void Cancel() => stop.Cancel();

    /// <summary>Asks it to stop and waits until it has let go.</summary>
    public async Task StopAsync(CancellationToken patience)
    {
        Cancel();
        for (var (now, next) = Now(); !now.IsEnded; (now, next) = Now())
        {
            await next.WaitAsync(patience).ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public void Report(string value) => Set(now => now with { Stage = value });

    /// <inheritdoc/>
    public void Report(PictureProgress value)
    {
        var isDue = false;
        lock (gate)
        {
            shareAtFirst = last is null ? value.Share : shareAtFirst;
            drawnAtLast = drawing.Elapsed;
            drawing.Start();
            last = value;
            isDue = picture is null || clock.Elapsed - seen >= BetweenViews;
        }

        var view = isDue ? value.SoFar() : null;
        Set(now => now with
        {
            Stage = value.Share >= ShareOfTheFilter && order.Denoise ? "Filtering the noise" : "Following light",
            Pass = value.Pass,
            Samples = value.Samples / (double)order.Stage.Size.Count,
            Noise = double.IsNaN(value.Noise) ? null : value.Noise,
            Share = value.Share,
        }, view);
    }

    /// <summary>Light is followed from now on.</summary>
    public void Draw() => Set(now => now with { State = PictureState.Drawing, Stage = "Lighting the scene" });

    /// <summary>It is finished. What each pixel shows was for the filter alone, and is twice the picture: it goes.</summary>
    public void Done(Picture finished) => End(now => now with
    {
        State = PictureState.Done,
        Share = 1,
        Samples = finished.Noise.MeanSamples,
        Noise = finished.Noise.Overall,
        FileName = Name(order, stem, isDone: true),
    }, finished with { Guides = null });

    /// <summary>It was stopped: what has been drawn by now is kept, to the last sample.</summary>
    public void Stopped() => End(now => now with { State = PictureState.Stopped }, last?.SoFar());

    /// <summary>It cannot be made.</summary>
    public void Failed(string reason) => End(now => now with { State = PictureState.Failed, Reason = reason }, null);

    private static string Name(PictureOrder order, string stem, bool isDone)
        => $"{stem}-{PictureWords.Of(order.Stage.Scene)}{(isDone ? "" : "-unfinished")}.png";

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    // The sums behind the last pass are many times the picture: they go with it.
    private void End(Func<PictureStatus, PictureStatus> set, Picture? view)
    {
        Set(now => set(now) with { Stage = "" }, view);
        clock.Stop();
        drawing.Stop();
        last = null;
    }

    private void Set(Func<PictureStatus, PictureStatus> set, Picture? view = null)
    {
        lock (gate)
        {
            status = set(status);
            if (view is not null)
            {
                (picture, seen) = (view, clock.Elapsed);
                status = status with { View = status.View + 1 };
            }

            change.SetResult();
            change = New();
        }
    }

    private sealed class Watcher(PictureJob job) : IDisposable
    {
        public void Dispose()
        {
            job.Ask();
            Interlocked.Decrement(ref job.listeners);
        }
    }
}
