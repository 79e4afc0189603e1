using Linewright.Pictures.Images;
using Linewright.Pictures.Transport;

namespace Linewright.Staging;

/// <summary>One picture as it is ordered.</summary>
/// <param name="Stage">What it shows, on what, how large.</param>
/// <param name="Quality">When it is done.</param>
public sealed record PictureOrder(StageOptions Stage, RenderQuality Quality)
{
    /// <summary>Client's size: good in minutes on two cores.</summary>
    public static PictureSize UsualSize { get; } = new(1920, 1080);

    /// <summary>Same seed, same picture.</summary>
    public uint Seed { get; init; } = 1;

    /// <summary>Whether what noise is left is filtered out at the end.</summary>
    public bool Denoise { get; init; } = true;

    /// <summary>Whether the first samples are told of one by one, so that a picture that is watched soon shows; has no influence on it.</summary>
    public bool ShowsEarly { get; init; }

    /// <summary>What draws it.</summary>
    public PictureEngine Engine { get; init; } = PictureEngine.Processor;

    /// <summary>The frames of a turntable: the same order, turned a little further each time.</summary>
    /// <param name="count">Frames in a whole turn, 1 or more.</param>
    public IEnumerable<PictureOrder> Frames(int count)
        => Enumerable.Range(0, count).Select(frame => this with { Stage = Stage with { Turn = frame * 2 * Math.PI / count, IsTurntable = true } });
}
