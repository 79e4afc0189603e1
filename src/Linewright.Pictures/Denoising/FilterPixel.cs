namespace Linewright.Pictures.Denoising;

/// <summary>One pixel as the filter wants it.</summary>
internal struct FilterPixel
{
    /// <summary>Red, green, blue of the first half of the samples.</summary>
    public (float Red, float Green, float Blue) First;

    /// <summary>Red, green, blue of the other half.</summary>
    public (float Red, float Green, float Blue) Second;

    /// <summary>Variance of a half's luminance.</summary>
    public float Variance;

    /// <summary>Share of light that the first surface throws back; the light on it is what is filtered.</summary>
    public (float Red, float Green, float Blue) Albedo;

    /// <summary>Mean normal, shorter than 1 where surfaces meet in the pixel.</summary>
    public (float X, float Y, float Z) Normal;

    /// <summary>How much of the pixel is covered, 0 to 1.</summary>
    public float Alpha;

    /// <summary>Number of the first surface.</summary>
    public int Facet;
}
