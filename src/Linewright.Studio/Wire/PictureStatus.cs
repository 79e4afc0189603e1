using System.Text.Json.Nodes;
using Linewright.Staging;

namespace Linewright.Studio.Wire;

/// <summary>How far a picture is, as it is told to who waits for it.</summary>
/// <param name="Key">Its name at the doors.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Stage">What is being done, in words; empty at the end.</param>
/// <param name="Order">What was ordered.</param>
/// <param name="FileName">The name of its PNG.</param>
public sealed record PictureStatus(string Key, PictureState State, string Stage, PictureOrder Order, string FileName)
{
    /// <summary>Passes over the picture, 0 before the first is done.</summary>
    public int Pass { get; init; }

    /// <summary>Samples taken of a pixel, on the mean.</summary>
    public double Samples { get; init; }

    /// <summary>Relative error before the filter; null where nothing can be said of it yet.</summary>
    public double? Noise { get; init; }

    /// <summary>Part of the drawing that is done, 0 to 1.</summary>
    public double Share { get; init; }

    /// <summary>Time gone since the order, s.</summary>
    public double SpentS { get; init; }

    /// <summary>Time that the drawing may still take, s; null while that is anybody's guess.</summary>
    public double? LeftS { get; init; }

    /// <summary>Counts what there was to see, 0 before anything.</summary>
    public int View { get; init; }

    /// <summary>Why it cannot be made; empty where it can.</summary>
    public string Reason { get; init; } = "";

    /// <summary>True where nothing more will come.</summary>
    public bool IsEnded => State is PictureState.Done or PictureState.Stopped or PictureState.Failed;

    /// <summary>As the doors give it.</summary>
    public JsonObject ToJson()
    {
        var (stage, at) = (Order.Stage, $"/api/picture/{Key}");
        return new JsonObject
        {
            ["picture"] = at,
            ["state"] = State.ToString().ToLowerInvariant(),
            ["stage"] = Stage,
            ["scene"] = PictureWords.Of(stage.Scene),
            ["width"] = stage.Size.Width,
            ["height"] = stage.Size.Height,
            ["quality"] = PictureWords.Of(Order.Quality),
            ["ground"] = PictureWords.Of(stage.Ground),
            ["transparent"] = stage.IsTransparent,
            ["focus"] = stage.FocusStone,
            ["seed"] = Order.Seed,
            ["denoise"] = Order.Denoise,
            ["pass"] = Pass,
            ["samples"] = Math.Round(Samples, 2),
            ["noise_percent"] = Noise is { } noise ? Math.Round(100 * noise, 2) : null,
            ["share"] = Math.Round(Share, 4),
            ["spent_s"] = Math.Round(SpentS, 1),
            ["left_s"] = LeftS is { } left ? Math.Round(left, 1) : null,
            ["view"] = View,
            ["name"] = FileName,
            ["reason"] = Reason.Length > 0 ? Reason : null,
        };
    }
}
