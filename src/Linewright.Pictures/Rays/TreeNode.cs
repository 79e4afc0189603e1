using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>Eight boxes side by side and what lies in each: 256 bytes, four cache lines.</summary>
/// <remarks>
/// Low and high bounds alternate, so that a ray's near side is one offset and its far side that offset with bit 5 turned.
/// A child at or above zero is another node; below zero its complement is a leaf: a block of triangles, or a thing.
/// An empty place has a box turned inside out, which no ray meets.
/// </remarks>
[StructLayout(LayoutKind.Sequential, Size = Bytes)]
internal unsafe struct TreeNode
{
    internal const int Bytes = 256;
    internal const int Width = 8;

    /// <summary>Byte offset of <see cref="Child"/>.</summary>
    internal const int Children = 6 * 4 * Width;

    public fixed float LowX[8];
    public fixed float HighX[8];
    public fixed float LowY[8];
    public fixed float HighY[8];
    public fixed float LowZ[8];
    public fixed float HighZ[8];
    public fixed int Child[8];

    /// <summary>Fills a place.</summary>
    public void Set(int place, Vector128<float> low, Vector128<float> high, int child)
    {
        (LowX[place], LowY[place], LowZ[place]) = (low.GetElement(0), low.GetElement(1), low.GetElement(2));
        (HighX[place], HighY[place], HighZ[place]) = (high.GetElement(0), high.GetElement(1), high.GetElement(2));
        Child[place] = child;
    }

    /// <summary>Turns all boxes inside out.</summary>
    public void Empty()
    {
        for (var i = 0; i < Width; i++)
        {
            LowX[i] = LowY[i] = LowZ[i] = float.PositiveInfinity;
            HighX[i] = HighY[i] = HighZ[i] = float.NegativeInfinity;
            Child[i] = 0;
        }
    }
}
