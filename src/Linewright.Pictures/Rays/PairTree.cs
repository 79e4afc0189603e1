using System.Buffers;

namespace Linewright.Pictures.Rays;

/// <summary>A run of boxes cut in two down to its leaves, and the way to fold that into nodes of eight with least work for rays.</summary>
/// <remarks>
/// Work is expected visits: a node and a block of triangles cost the same, each as often as its box is met, so by its
/// surface. Every pair knows the least for each number of places that it may take in the node above; that is all its
/// parent needs. Cutting the largest box until there are eight instead leaves half of the places empty near the leaves.
/// Source: Ylitie, Karras and Laine (2017), Efficient incoherent ray traversal on GPUs through compressed wide BVHs.
/// </remarks>
internal sealed unsafe class PairTree : IDisposable
{
    /// <summary>From here on runs are halved by number: bounds the depth where boxes shrink without end.</summary>
    internal const int LevelsBySurface = 16;

    private readonly PairNode[] pairs;
    private readonly int leafSize;
    private int count;

    public PairTree(BoxItem* items, in BoxRange range, int leafSize, bool halve)
    {
        this.leafSize = leafSize;
        pairs = ArrayPool<PairNode>.Shared.Rent(2 * range.Count);
        Cut(items, range, halve ? LevelsBySurface : 0);
    }

    /// <summary>One of the pairs; 0 is the whole run.</summary>
    public ref readonly PairNode this[int pair] => ref pairs[pair];

    /// <summary>The pairs that fill the wide node over one; itself where it is a leaf.</summary>
    /// <returns>How many there are.</returns>
    public int Entries(int pair, Span<int> entries)
    {
        var used = 0;
        Collect(pair, TreeNode.Width, entries, ref used);
        return used;
    }

    /// <summary>Gives the memory back.</summary>
    public void Dispose() => ArrayPool<PairNode>.Shared.Return(pairs);

    private void Collect(int pair, int places, Span<int> entries, ref int used)
    {
        ref readonly var node = ref pairs[pair];
        int left = node.ToLeft[places];
        if (left == 0)
        {
            entries[used++] = pair;
            return;
        }

        Collect(pair + 1, left, entries, ref used);
        Collect(node.Right, places - left, entries, ref used);
    }

    private int Cut(BoxItem* items, in BoxRange range, int level)
    {
        var me = count++;
        ref var node = ref pairs[me];
        (node.Low, node.High, node.First, node.Count, node.Right) = (range.Low, range.High, range.First, range.Count, 0);
        var surface = range.Surface;
        if (range.Count <= leafSize)
        {
            for (var places = 1; places < TreeNode.Width; places++)
            {
                node.Work[places] = surface;
                node.ToLeft[places] = 0;
            }

            node.ToLeft[TreeNode.Width] = 0;
            return me;
        }

        var (left, right) = level < LevelsBySurface ? BoxSplitter.Split(items, range) : BoxSplitter.Halve(items, range);
        Cut(items, left, level + 1);
        node.Right = Cut(items, right, level + 1);
        Share(ref node, in pairs[me + 1], in pairs[node.Right], surface);
        return me;
    }

    private static void Share(ref PairNode node, in PairNode left, in PairNode right, float surface)
    {
        node.Work[1] = surface + Spread(left, right, TreeNode.Width, out node.ToLeft[TreeNode.Width]);
        node.ToLeft[1] = 0;
        for (var places = 2; places < TreeNode.Width; places++)
        {
            var spread = Spread(left, right, places, out var toLeft);
            var better = spread < node.Work[places - 1];
            node.Work[places] = better ? spread : node.Work[places - 1];
            node.ToLeft[places] = better ? toLeft : node.ToLeft[places - 1];
        }
    }

    /// <summary>Least work where both halves share so many places.</summary>
    private static float Spread(in PairNode left, in PairNode right, int places, out byte toLeft)
    {
        toLeft = 1;
        var least = left.Work[1] + right.Work[places - 1];
        for (var k = 2; k < places; k++)
        {
            var work = left.Work[k] + right.Work[places - k];
            if (work < least)
            {
                least = work;
                toLeft = (byte)k;
            }
        }

        return least;
    }
}
