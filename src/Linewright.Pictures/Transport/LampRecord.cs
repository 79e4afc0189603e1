using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A rectangle of light, for the kernel: corner, edges, how often it is chosen.</summary>
internal struct LampRecord
{
    public Float3 Corner;
    public Float3 EdgeU;
    public Float3 EdgeV;
    public Float3 Normal;
    public float OverU;
    public float OverV;
    public float Area;
    public int Column;
    public float Chance;
}
