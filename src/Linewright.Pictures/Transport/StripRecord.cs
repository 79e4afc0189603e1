using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A strip of the surroundings, for the kernel: a rectangle on the plane at distance 1.</summary>
internal struct StripRecord
{
    public Float3 Towards;
    public Float3 Along;
    public Float3 Across;
    public float HalfLength;
    public float HalfWidth;
    public float Fade;
    public float Radiance;
}
