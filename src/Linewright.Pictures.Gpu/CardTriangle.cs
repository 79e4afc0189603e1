using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Gpu;

/// <summary>A triangle as a corner and the two edges from it, and its number in its mesh.</summary>
internal struct CardTriangle
{
    public Float3 Corner;
    public Float3 EdgeU;
    public Float3 EdgeV;
    public int Number;
}
