using System.Runtime.InteropServices;

namespace Linewright.Pictures.Rays;

/// <summary>Up to eight triangles side by side: a corner and the two edges from it. 320 bytes.</summary>
/// <remarks>An empty place has edges of length zero: its determinant is 0 and every comparison with the outcome fails.</remarks>
[StructLayout(LayoutKind.Sequential, Size = Bytes)]
internal unsafe struct TriangleBlock
{
    internal const int Bytes = 320;

    public fixed float CornerX[8];
    public fixed float CornerY[8];
    public fixed float CornerZ[8];
    public fixed float EdgeUX[8];
    public fixed float EdgeUY[8];
    public fixed float EdgeUZ[8];
    public fixed float EdgeVX[8];
    public fixed float EdgeVY[8];
    public fixed float EdgeVZ[8];
    public fixed int Triangle[8];
}
