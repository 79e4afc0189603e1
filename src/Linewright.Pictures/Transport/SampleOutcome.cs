using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>What one sample of a pixel saw.</summary>
internal struct SampleOutcome
{
    public Float3 Colour;
    public float Alpha;
    public Float3 Albedo;
    public Float3 Normal;
    public float Depth;
    public int Facet;

    /// <summary>Radius of the lens's circle there, pixels; 0 where nothing stands.</summary>
    public float Blur;
}
