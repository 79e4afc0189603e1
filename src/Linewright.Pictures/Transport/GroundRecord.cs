using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>The ground, for the kernel; kind -1: there is none.</summary>
internal struct GroundRecord
{
    public int Kind;
    public float Height;
    public float Grain;
    public int Transparent;
    public int Column;
    public float CoatRough;
    public float CoatMean;
    public int CoatAlbedo;
    public Float3 Colour;
}
