namespace Linewright.Pictures.Transport;

/// <summary>When a picture is done.</summary>
public enum RenderQuality
{
    /// <summary>16 samples a pixel at most: composition and light, in seconds.</summary>
    Draft,

    /// <summary>Noise of 6 % a tile before the filter, at most 512 samples a pixel: what one shows a client.</summary>
    Good,

    /// <summary>Noise of 2 % a tile, at most 8,192 samples a pixel, nothing clamped: what one prints.</summary>
    Final,
}
