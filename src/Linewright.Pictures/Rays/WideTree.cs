using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Linewright.Solids.Meshing;

namespace Linewright.Pictures.Rays;

/// <summary>A tree of boxes, eight to a node, over the triangles of a mesh or over whole things.</summary>
/// <remarks>
/// Built from the top: the largest box of a node is cut until there are eight; short runs are cut down to their leaves
/// first and folded into nodes after. Subtrees are built side by side; where they lie in memory depends on the threads,
/// what they are does not.
/// </remarks>
internal sealed unsafe class WideTree : IDisposable
{
    /// <summary>Runs longer than this are worth a thread of their own.</summary>
    private const int WorthAThread = 8192;

    /// <summary>Runs up to this are folded as a whole. Measured: longer ones take memory, and the tree gets no better by more than 2 %.</summary>
    private const int Foldable = 4096;

    /// <summary>From here on long runs are halved by number: bounds the depth where boxes shrink without end.</summary>
    private const int LevelsBySurface = 10;

    /// <summary>Levels of nodes at most: those by surface, then each halves what is left, 2^30 items in long runs, 2^9 leaves in short ones.</summary>
    internal const int MostLevels = LevelsBySurface + 18 + PairTree.LevelsBySurface + 9;

    private readonly AlignedBlock<TreeNode> nodes;
    private readonly AlignedBlock<TriangleBlock> blocks;
    private readonly AlignedBlock<BoxItem> items;
    private Mesh? mesh;
    private readonly int leafSize;
    private readonly int threads;
    private int nodeCount;
    private int blockCount;

    private WideTree(AlignedBlock<BoxItem> items, BoxRange all, Mesh? mesh, int threads)
    {
        this.items = items;
        this.mesh = mesh;
        this.threads = threads;
        leafSize = mesh is null ? 1 : 8;
        nodes = new AlignedBlock<TreeNode>(Math.Max(1, all.Count));
        blocks = new AlignedBlock<TriangleBlock>(mesh is null ? 1 : Math.Max(1, all.Count));
        All = all;
        Grow(all, 0);

        // Needed no longer: 32 bytes a triangle.
        items.Dispose();
        this.mesh = null;
    }

    /// <summary>Root is node 0.</summary>
    public TreeNode* Nodes => nodes.Pointer;

    /// <summary>Leaves of a mesh; none where the leaves are things.</summary>
    public TriangleBlock* Blocks => blocks.Pointer;

    /// <summary>Nodes in use.</summary>
    public int NodeCount => nodeCount;

    /// <summary>Blocks in use.</summary>
    public int BlockCount => blockCount;

    /// <summary>Box around everything.</summary>
    public BoxRange All { get; }

    /// <summary>Over the triangles of a mesh, in its frame.</summary>
    public static WideTree Over(Mesh mesh, int threads)
    {
        var count = mesh.TriangleCount;
        var leaves = new AlignedBlock<BoxItem>(count);
        var chunks = Math.Max(1, Math.Min(count / WorthAThread, 64));
        var ranges = new BoxRange[chunks];
        Side(chunks, threads, chunk =>
        {
            int first = (int)((long)count * chunk / chunks), end = (int)((long)count * (chunk + 1) / chunks);
            ReadOnlySpan<float> p = mesh.Positions;
            ReadOnlySpan<int> t = mesh.Triangles;
            var range = BoxRange.Nothing(first);
            for (var i = first; i < end; i++)
            {
                Vector128<float> a = Corner(p, t[3 * i]), b = Corner(p, t[3 * i + 1]), c = Corner(p, t[3 * i + 2]);
                var item = new BoxItem(
                    Vector128.MinNative(a, Vector128.MinNative(b, c)), Vector128.MaxNative(a, Vector128.MaxNative(b, c)), i);
                leaves.Pointer[i] = item;
                range.Take(item);
            }

            ranges[chunk] = range;
        });
        var all = BoxRange.Nothing(0);
        foreach (var range in ranges)
        {
            all.Join(range);
        }

        return new WideTree(leaves, all, mesh, threads);
    }

    /// <summary>Over whole things, one a leaf; the leaf's number is the thing's place in the list.</summary>
    public static WideTree Over(IReadOnlyList<(Float3 Low, Float3 High)> boxes)
    {
        var leaves = new AlignedBlock<BoxItem>(boxes.Count);
        var all = BoxRange.Nothing(0);
        for (var i = 0; i < boxes.Count; i++)
        {
            var (low, high) = boxes[i];
            var item = new BoxItem(Vector128.Create(low.X, low.Y, low.Z, 0), Vector128.Create(high.X, high.Y, high.Z, 0), i);
            leaves.Pointer[i] = item;
            all.Take(item);
        }

        return new WideTree(leaves, all, null, 1);
    }

    /// <summary>Gives the memory back.</summary>
    public void Dispose()
    {
        nodes.Dispose();
        blocks.Dispose();
    }

    private static Vector128<float> Corner(ReadOnlySpan<float> positions, int index)
        => Vector128.Create(positions[3 * index], positions[3 * index + 1], positions[3 * index + 2], 0);

    private static void Side(int count, int threads, Action<int> work)
    {
        if (threads == 1 || count == 1)
        {
            for (var i = 0; i < count; i++)
            {
                work(i);
            }

            return;
        }

        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads > 0 ? threads : -1, TaskScheduler = TaskScheduler.Current }, work);
    }

    /// <summary>Writes the node over a run and everything below it; returns its number.</summary>
    private int Grow(BoxRange range, int level)
    {
        if (range.Count is > 0 and <= Foldable)
        {
            using var pairs = new PairTree(items.Pointer, range, leafSize, level >= LevelsBySurface);
            return Fold(pairs, 0);
        }

        var me = Interlocked.Increment(ref nodeCount) - 1;
        var node = nodes.Pointer + me;
        node->Empty();
        if (range.Count == 0)
        {
            return me;
        }

        // Cut the largest until the node is full or only leaves are left.
        var parts = new BoxRange[TreeNode.Width];
        parts[0] = range;
        var count = 1;
        while (count < TreeNode.Width)
        {
            var pick = -1;
            var largest = -1f;
            for (var i = 0; i < count; i++)
            {
                if (parts[i].Count > leafSize && parts[i].Surface > largest)
                {
                    (pick, largest) = (i, parts[i].Surface);
                }
            }

            if (pick < 0)
            {
                break;
            }

            (parts[pick], parts[count]) = level < LevelsBySurface
                ? BoxSplitter.Split(items.Pointer, parts[pick])
                : BoxSplitter.Halve(items.Pointer, parts[pick]);
            count++;
        }

        var children = new int[count];
        Side(count, range.Count > WorthAThread ? threads : 1, i => children[i] = parts[i].Count <= leafSize ? ~Leaf(parts[i].First, parts[i].Count) : Grow(parts[i], level + 1));
        for (var i = 0; i < count; i++)
        {
            node->Set(i, parts[i].Low, parts[i].High, children[i]);
        }

        return me;
    }

    /// <summary>Writes the node over a pair and everything below it; returns its number.</summary>
    private int Fold(PairTree pairs, int pair)
    {
        var me = Interlocked.Increment(ref nodeCount) - 1;
        var node = nodes.Pointer + me;
        node->Empty();
        Span<int> entries = stackalloc int[TreeNode.Width];
        var count = pairs.Entries(pair, entries);
        for (var i = 0; i < count; i++)
        {
            ref readonly var run = ref pairs[entries[i]];
            node->Set(i, run.Low, run.High, run.Right == 0 ? ~Leaf(run.First, run.Count) : Fold(pairs, entries[i]));
        }

        return me;
    }

    private int Leaf(int first, int count)
    {
        if (mesh is null)
        {
            return items.Pointer[first].Index;
        }

        var me = Interlocked.Increment(ref blockCount) - 1;
        var block = blocks.Pointer + me;
        Unsafe.InitBlock(block, 0, TriangleBlock.Bytes);
        ReadOnlySpan<float> p = mesh.Positions;
        ReadOnlySpan<int> t = mesh.Triangles;
        for (var i = 0; i < count; i++)
        {
            var triangle = items.Pointer[first + i].Index;
            Vector128<float> a = Corner(p, t[3 * triangle]), u = Corner(p, t[3 * triangle + 1]) - a, v = Corner(p, t[3 * triangle + 2]) - a;
            (block->CornerX[i], block->CornerY[i], block->CornerZ[i]) = (a.GetElement(0), a.GetElement(1), a.GetElement(2));
            (block->EdgeUX[i], block->EdgeUY[i], block->EdgeUZ[i]) = (u.GetElement(0), u.GetElement(1), u.GetElement(2));
            (block->EdgeVX[i], block->EdgeVY[i], block->EdgeVZ[i]) = (v.GetElement(0), v.GetElement(1), v.GetElement(2));
            block->Triangle[i] = triangle;
        }

        return me;
    }
}
