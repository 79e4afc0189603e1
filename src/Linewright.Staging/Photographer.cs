using System.Collections.Concurrent;
using Linewright.Assembly;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;

namespace Linewright.Staging;

/// <summary>Front door: takes pictures of one piece. A pose is laid once, however many pictures are taken of it.</summary>
public sealed class Photographer
{
    private readonly PieceModel model;
    private readonly ConcurrentDictionary<SceneKind, Stager> stagers = new();

    /// <summary>For a piece with its meshes.</summary>
    public Photographer(PieceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        this.model = model;
    }

    /// <summary>Sets a scene up without drawing it.</summary>
    public StagedScene Stage(StageOptions options, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        return stagers.GetOrAdd(options.Scene, scene => new Stager(model, scene, Poses.Of(model, scene, stop))).Stage(options);
    }

    /// <summary>Draws a picture; the same order gives the same picture, bit for bit, on one machine.</summary>
    /// <param name="order">What and how well.</param>
    /// <param name="progress">Told after every pass.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public Picture Take(PictureOrder order, IProgress<PictureProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(order);
        var staged = Stage(order.Stage, stop);
        return PathTracer.Render(staged.Scene, order.Stage.Size, Settings(order), progress, stop);
    }

    private static RenderSettings Settings(PictureOrder order)
        => RenderSettings.Of(order.Quality) with { Seed = order.Seed, Denoise = order.Denoise, ShowsEarly = order.ShowsEarly, Engine = order.Engine };
}
