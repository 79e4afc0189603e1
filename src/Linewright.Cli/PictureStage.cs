using System.Diagnostics;
using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;

namespace Linewright.Cli;

/// <summary>Says how far a picture is and how long it may still take, on the line for stages.</summary>
internal sealed class PictureStage(IProgress<string> line, string name) : IProgress<string>, IProgress<PictureProgress>
{
    private readonly Stopwatch watch = Stopwatch.StartNew();
    private readonly Stopwatch drawing = new();

    /// <inheritdoc/>
    public void Report(string value) => line.Report(value);

    /// <inheritdoc/>
    public void Report(PictureProgress value)
    {
        drawing.Start();
        var left = value.Share > 0.02
            ? $", about {Minutes(drawing.Elapsed.TotalSeconds * (1 - value.Share) / value.Share)} left"
            : "";
        line.Report(FormattableString.Invariant($"{name}: {100 * value.Share:0} %, noise {100 * value.Noise:0.0} %{left}"));
    }

    /// <summary>What it took.</summary>
    public PictureSummary Summary(Picture picture) => new(picture.Noise.MeanSamples, picture.Noise.Overall, Minutes(watch.Elapsed.TotalSeconds));

    private static string Minutes(double seconds)
        => FormattableString.Invariant($"{(int)(seconds / 60)}:{(int)(seconds % 60):00}");
}
