using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Gpu;

/// <summary>Two boxes and what lies in each: 64 bytes, two of a card's memory sectors.</summary>
/// <remarks>
/// A child at or above zero is another node. Below zero its complement is a leaf: over things a thing's number; over
/// triangles the first of them times eight, plus their number less one.
/// </remarks>
internal struct CardNode
{
    public Float3 LowA;
    public Float3 HighA;
    public Float3 LowB;
    public Float3 HighB;
    public int ChildA;
    public int ChildB;
    public int Unused0;
    public int Unused1;
}
