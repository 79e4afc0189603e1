namespace Linewright.Pictures.Denoising;

/// <summary>Finds single pixels that one lucky sample has set alight.</summary>
/// <remarks>
/// A pixel is one where its two halves disagree by more than twice and it outshines every neighbour by more than three
/// times; it is then brought down to the brightest of them. Takes energy away, so it is off for final pictures. A facet
/// that truly flashes does so in both halves and stays.
/// </remarks>
internal static class Fireflies
{
    private const float Disagreement = 2;
    private const float Outshining = 3;

    /// <summary>Factor on a pixel's light, 1 for nearly all.</summary>
    /// <param name="first">Luminance of one half.</param>
    /// <param name="second">Luminance of the other half.</param>
    /// <param name="brightestNeighbour">Largest mean luminance of the eight pixels round it.</param>
    public static float Factor(float first, float second, float brightestNeighbour)
    {
        float high = MathF.Max(first, second), low = MathF.Max(0, MathF.Min(first, second)), mean = 0.5f * (first + second);
        return high > Disagreement * low && mean > Outshining * (brightestNeighbour + 0.01f)
            ? (brightestNeighbour + 0.01f) / mean
            : 1;
    }
}
