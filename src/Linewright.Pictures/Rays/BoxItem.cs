using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>A box on its way into a tree: 32 bytes, moved as a whole so that every pass reads memory in order.</summary>
/// <remarks>The fourth lane of the low corner carries the index of what is in the box, as bits.</remarks>
internal struct BoxItem(Vector128<float> low, Vector128<float> high, int index)
{
    public Vector128<float> Low = low.WithElement(3, BitConverter.Int32BitsToSingle(index));
    public Vector128<float> High = high;

    public readonly int Index => Low.AsInt32().GetElement(3);

    /// <summary>Twice the middle.</summary>
    public readonly Vector128<float> Middle => Low + High;
}
