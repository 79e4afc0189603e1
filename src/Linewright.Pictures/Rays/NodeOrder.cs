using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>Which of the boxes that a ray meets comes next, and which wait.</summary>
/// <remarks>
/// A waiting node is one number: the bits of the distance where the ray enters it above, which node it is below. Entries
/// are not negative, so the numbers stand in the order of the entries, and the nearer of two is found without a jump that
/// the processor would guess wrong every other time.
/// </remarks>
internal static unsafe class NodeOrder
{
    /// <summary>Nodes that can wait at once in one tree: seven a level, and <see cref="WideTree.MostLevels"/>.</summary>
    internal const int Depth = (TreeNode.Width - 1) * WideTree.MostLevels;

    /// <summary>Puts all but the nearest of the boxes met on the stack, farthest lowest, and returns the nearest.</summary>
    /// <param name="node">The node whose boxes were met.</param>
    /// <param name="met">One bit a box; at least one.</param>
    /// <param name="entry">Where each is entered.</param>
    /// <param name="keys">Room for eight.</param>
    /// <param name="top">Where the next to wait goes.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Next(byte* node, uint met, Vector256<float> entry, ulong* keys, ref ulong* top)
    {
        var first = BitOperations.TrailingZeroCount(met);
        var others = met & (met - 1);
        if (others == 0)
        {
            return ((int*)(node + TreeNode.Children))[first];
        }

        Vector256<uint> bits = entry.AsUInt32(), child = Vector256.LoadAligned((uint*)(node + TreeNode.Children));
        ((Vector256.WidenLower(bits) << 32) | Vector256.WidenLower(child)).Store(keys);
        ((Vector256.WidenUpper(bits) << 32) | Vector256.WidenUpper(child)).Store(keys + 4);

        // Both are below 2^63: the sign of the difference says which is less.
        ulong a = keys[first], b = keys[BitOperations.TrailingZeroCount(others)];
        var step = (a - b) & (ulong)((long)(a - b) >> 63);
        *top++ = a - step;
        others &= others - 1;
        return others == 0 ? (int)(b + step) : Sort(keys, others, b + step, ref top);
    }

    /// <summary>Where the ray enters a waiting node.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Entry(ulong waiting) => BitConverter.UInt32BitsToSingle((uint)(waiting >> 32));

    // Two are in order already, the farther on the stack.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Sort(ulong* keys, uint others, ulong nearest, ref ulong* top)
    {
        var floor = top - 1;
        var end = top;
        *end++ = nearest;
        do
        {
            var key = keys[BitOperations.TrailingZeroCount(others)];
            others &= others - 1;
            var place = end++;
            while (place > floor && place[-1] < key)
            {
                *place = place[-1];
                place--;
            }

            *place = key;
        }
        while (others != 0);
        top = end - 1;
        return (int)*top;
    }
}
