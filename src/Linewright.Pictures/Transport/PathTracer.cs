using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;

namespace Linewright.Pictures.Transport;

/// <summary>The front door: from a scene to a picture.</summary>
/// <remarks>
/// The same scene, size and settings give the same picture, bit for bit, whatever the number of threads. Machines with
/// different vector units round differently: there the pictures agree within their noise.
/// </remarks>
public static class PathTracer
{
    /// <summary>Draws the scene; reports after every pass.</summary>
    /// <param name="scene">What to draw.</param>
    /// <param name="size">Pixels across and down.</param>
    /// <param name="settings">How well.</param>
    /// <param name="progress">Told after every pass; null for none.</param>
    /// <param name="stop">Stops between tiles.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scene or the settings hold a number outside its range.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Picture Render(
        Scene scene, PictureSize size, RenderSettings settings, IProgress<PictureProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(settings);
        scene.Check();
        settings.Check();
        using var compiled = new CompiledScene(scene, size, settings);
        return new RenderRun(compiled, size, settings, stop).Draw(progress);
    }
}
