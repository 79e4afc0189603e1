using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Boxes round boxes round the triangles of a mesh, to find those near each other.</summary>
/// <remarks>Halved at the middle triangle along the longest side of the centroids' box: the depth is the logarithm of the count.</remarks>
internal sealed class TriangleTree
{
    private const int MostInLeaf = 4;
    private readonly Box[] boxes; // of triangles
    private readonly float[] centres; // along the axis being sorted
    private readonly List<Node> nodes = [];

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public TriangleTree(Mesh mesh)
    {
        var count = mesh.TriangleCount;
        boxes = new Box[count];
        Order = new int[count];
        centres = new float[count];
        var p = mesh.Positions;
        var triangles = mesh.Triangles;
        for (var t = 0; t < count; t++)
        {
            int a = triangles[t * 3] * 3, b = triangles[t * 3 + 1] * 3, c = triangles[t * 3 + 2] * 3;
            boxes[t] = new Box(
                MathF.Min(p[a], MathF.Min(p[b], p[c])),
                MathF.Min(p[a + 1], MathF.Min(p[b + 1], p[c + 1])),
                MathF.Min(p[a + 2], MathF.Min(p[b + 2], p[c + 2])),
                MathF.Max(p[a], MathF.Max(p[b], p[c])),
                MathF.Max(p[a + 1], MathF.Max(p[b + 1], p[c + 1])),
                MathF.Max(p[a + 2], MathF.Max(p[b + 2], p[c + 2])));
            Order[t] = t;
        }

        if (count > 0)
        {
            Build(0, count);
        }
    }

    /// <summary>Triangles in the order of the tree.</summary>
    public int[] Order { get; }

    /// <summary>Box of a triangle.</summary>
    public ref readonly Box BoxOf(int triangle) => ref boxes[triangle];

    /// <summary>Lists the triangles numbered above a given one whose boxes touch its box.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void ListNear(int triangle, List<int> into)
    {
        ref readonly var box = ref boxes[triangle];
        Span<int> stack = stackalloc int[64];
        var depth = 0;
        stack[depth++] = 0;
        while (depth > 0)
        {
            var node = nodes[stack[--depth]];
            if (!node.Box.Touches(in box) || node.Highest <= triangle)
            {
                continue;
            }

            if (node.Second >= 0)
            {
                stack[depth++] = node.First;
                stack[depth++] = node.Second;
                continue;
            }

            for (var i = node.First; i < node.First - node.Second; i++)
            {
                var other = Order[i];
                if (other > triangle && boxes[other].Touches(in box))
                {
                    into.Add(other);
                }
            }
        }
    }

    private int Build(int from, int to)
    {
        var box = boxes[Order[from]];
        var highest = Order[from];
        float lowX = float.MaxValue, lowY = float.MaxValue, lowZ = float.MaxValue, highX = float.MinValue, highY = float.MinValue, highZ = float.MinValue;
        for (var i = from; i < to; i++)
        {
            ref readonly var b = ref boxes[Order[i]];
            box = box.Join(in b);
            highest = Math.Max(highest, Order[i]);
            float x = b.LowX + b.HighX, y = b.LowY + b.HighY, z = b.LowZ + b.HighZ;
            (lowX, lowY, lowZ) = (MathF.Min(lowX, x), MathF.Min(lowY, y), MathF.Min(lowZ, z));
            (highX, highY, highZ) = (MathF.Max(highX, x), MathF.Max(highY, y), MathF.Max(highZ, z));
        }

        var at = nodes.Count;
        if (to - from <= MostInLeaf)
        {
            nodes.Add(new Node(box, from, from - to, highest));
            return at;
        }

        nodes.Add(default);
        float wide = highX - lowX, deep = highY - lowY, tall = highZ - lowZ;
        for (var i = from; i < to; i++)
        {
            ref readonly var b = ref boxes[Order[i]];
            centres[i] = wide >= deep && wide >= tall ? b.LowX + b.HighX : deep >= tall ? b.LowY + b.HighY : b.LowZ + b.HighZ;
        }

        Array.Sort(centres, Order, from, to - from);
        var middle = (from + to) / 2;
        var first = Build(from, middle);
        var second = Build(middle, to);
        nodes[at] = new Node(box, first, second, highest);
        return at;
    }

    /// <summary>A box in single precision; sides included.</summary>
    public readonly record struct Box(float LowX, float LowY, float LowZ, float HighX, float HighY, float HighZ)
    {
        public Box Join(in Box other) => new(
            MathF.Min(LowX, other.LowX),
            MathF.Min(LowY, other.LowY),
            MathF.Min(LowZ, other.LowZ),
            MathF.Max(HighX, other.HighX),
            MathF.Max(HighY, other.HighY),
            MathF.Max(HighZ, other.HighZ));

        public bool Touches(in Box other)
            => LowX <= other.HighX && HighX >= other.LowX && LowY <= other.HighY && HighY >= other.LowY && LowZ <= other.HighZ && HighZ >= other.LowZ;
    }

    /// <summary>Two nodes, or from First on as many triangles as minus Second.</summary>
    private readonly record struct Node(Box Box, int First, int Second, int Highest);
}
