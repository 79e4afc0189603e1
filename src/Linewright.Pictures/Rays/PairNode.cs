using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>A run of boxes on its way into a wide tree: whole, or cut in two, and the work that rays will have with it.</summary>
internal unsafe struct PairNode
{
    /// <summary>Box around the run.</summary>
    public Vector128<float> Low;

    /// <inheritdoc cref="Low"/>
    public Vector128<float> High;

    /// <summary>The run, where it is a leaf.</summary>
    public int First;

    /// <inheritdoc cref="First"/>
    public int Count;

    /// <summary>The halves' places among the pairs; the left one follows its parent. 0 for a leaf.</summary>
    public int Right;

    /// <summary>Least work below, by the number of places in the wide node above that the run may take, 1 to 7.</summary>
    public fixed float Work[TreeNode.Width];

    /// <summary>How many of those places go to the left half; 0: the run stays in one. At 8: the node of its own.</summary>
    public fixed byte ToLeft[TreeNode.Width + 1];
}
