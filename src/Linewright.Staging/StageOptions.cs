using Linewright.Pictures.Images;

namespace Linewright.Staging;

/// <summary>What may be asked of a picture; all else is by rule.</summary>
/// <param name="Scene">What it shows.</param>
/// <param name="Size">Pixels; the framing fits any proportions.</param>
public sealed record StageOptions(SceneKind Scene, PictureSize Size)
{
    /// <summary>What the piece lies on.</summary>
    public StageGround Ground { get; init; } = StageGround.Paper;

    /// <summary>Leaves the ground out but for the shadow on it.</summary>
    public bool IsTransparent { get; init; }

    /// <summary>The stone that is sharp, counted from 1 at the tongue; null: by rule.</summary>
    public int? FocusStone { get; init; }

    /// <summary>How far the piece is turned on its ground, radians.</summary>
    public double Turn { get; init; }

    /// <summary>Whether the frame leaves room for a whole turn, so that the frames of a turntable fit each other.</summary>
    public bool IsTurntable { get; init; }
}
