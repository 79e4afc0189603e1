using Linewright.Pictures.Transport;
using Linewright.Staging;

namespace Linewright.Cli;

/// <summary>One line on a finished picture.</summary>
/// <param name="Samples">A pixel, on the mean.</param>
/// <param name="Noise">Relative error before the filter.</param>
/// <param name="Time">Minutes and seconds.</param>
internal sealed record PictureSummary(double Samples, double Noise, string Time)
{
    /// <summary>Size, quality, noise and time.</summary>
    public string Words(PictureOrder order)
    {
        var size = order.Stage.Size;
        return FormattableString.Invariant(
            $"{size.Width} x {size.Height}, {order.Quality.ToString().ToLowerInvariant()}, {Samples:0} samples a pixel{(order.Engine == PictureEngine.Processor ? "" : $" on {order.Engine.Name}")}, noise {100 * Noise:0.0} %{(order.Denoise ? " before the filter" : "")}, {Time}");
    }
}
