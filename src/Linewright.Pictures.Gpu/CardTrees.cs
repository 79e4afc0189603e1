using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Gpu;

/// <summary>The processor's wide trees as trees of pairs, which suit a card's many narrow lanes better.</summary>
/// <remarks>The children of a wide node are split where the boxes of the halves, weighed by their number, have the least surface.</remarks>
internal sealed unsafe class CardTrees
{
    private readonly List<CardNode> nodes = [];
    private readonly List<CardTriangle> triangles = [];

    /// <summary>All trees' nodes.</summary>
    public CardNode[] Nodes => [.. nodes];

    /// <summary>All trees' triangles.</summary>
    public CardTriangle[] Triangles => [.. triangles];

    /// <summary>Takes a tree over; returns its root, always a node.</summary>
    public int Add(WideTree tree)
    {
        var children = Children(tree, tree.Nodes);
        if (children.Count == 1)
        {
            var only = Emit(tree, children, out var box);
            if (only >= 0)
            {
                return only;
            }

            nodes.Add(new CardNode { LowA = box.Low, HighA = box.High, ChildA = only, LowB = Nowhere, HighB = Nowhere });
            return nodes.Count - 1;
        }

        return Emit(tree, children, out _);
    }

    /// <summary>A point beyond the farthest that a ray looks.</summary>
    private static Float3 Nowhere => new(1e30f, 1e30f, 1e30f);

    private int Emit(WideTree tree, List<Child> children, out Box box)
    {
        if (children.Count == 1)
        {
            var child = children[0];
            box = child.Box;
            return child.Place >= 0 ? Emit(tree, Children(tree, tree.Nodes + child.Place), out _) : Leaf(tree, ~child.Place);
        }

        var (left, right) = Split(children);
        var at = nodes.Count;
        nodes.Add(default);
        var a = Emit(tree, left, out var boxA);
        var b = Emit(tree, right, out var boxB);
        nodes[at] = new CardNode { LowA = boxA.Low, HighA = boxA.High, ChildA = a, LowB = boxB.Low, HighB = boxB.High, ChildB = b };
        box = boxA.Join(boxB);
        return at;
    }

    private int Leaf(WideTree tree, int place)
    {
        if (tree.BlockCount == 0)
        {
            return ~place;
        }

        var block = tree.Blocks + place;
        var first = triangles.Count;
        for (var i = 0; i < TreeNode.Width; i++)
        {
            var triangle = new CardTriangle
            {
                Corner = new Float3(block->CornerX[i], block->CornerY[i], block->CornerZ[i]),
                EdgeU = new Float3(block->EdgeUX[i], block->EdgeUY[i], block->EdgeUZ[i]),
                EdgeV = new Float3(block->EdgeVX[i], block->EdgeVY[i], block->EdgeVZ[i]),
                Number = block->Triangle[i],
            };
            if (Float3.Dot(triangle.EdgeU, triangle.EdgeU) > 0)
            {
                triangles.Add(triangle);
            }
        }

        if (triangles.Count == first)
        {
            triangles.Add(default);
        }

        return ~(first * TreeNode.Width + triangles.Count - first - 1);
    }

    private static List<Child> Children(WideTree tree, TreeNode* node)
    {
        var children = new List<Child>(TreeNode.Width);
        for (var i = 0; i < TreeNode.Width; i++)
        {
            if (node->LowX[i] <= node->HighX[i])
            {
                var box = new Box(new Float3(node->LowX[i], node->LowY[i], node->LowZ[i]), new Float3(node->HighX[i], node->HighY[i], node->HighZ[i]));
                children.Add(new Child(box, node->Child[i]));
            }
        }

        return children;
    }

    private static (List<Child> Left, List<Child> Right) Split(List<Child> children)
    {
        var least = float.PositiveInfinity;
        (List<Child> Left, List<Child> Right) best = default;
        for (var axis = 0; axis < 3; axis++)
        {
            var sorted = children.OrderBy(child => child.Box.Middle(axis)).ToList();
            for (var cut = 1; cut < sorted.Count; cut++)
            {
                Box low = sorted[0].Box, high = sorted[cut].Box;
                for (var i = 1; i < sorted.Count; i++)
                {
                    if (i < cut)
                    {
                        low = low.Join(sorted[i].Box);
                    }
                    else
                    {
                        high = high.Join(sorted[i].Box);
                    }
                }

                var cost = low.Surface * cut + high.Surface * (sorted.Count - cut);
                if (cost < least)
                {
                    least = cost;
                    best = (sorted[..cut], sorted[cut..]);
                }
            }
        }

        return best;
    }

    private readonly record struct Child(Box Box, int Place);

    private readonly record struct Box(Float3 Low, Float3 High)
    {
        public float Surface
        {
            get
            {
                var size = High - Low;
                return size.X * size.Y + size.Y * size.Z + size.Z * size.X;
            }
        }

        public float Middle(int axis) => axis == 0 ? Low.X + High.X : axis == 1 ? Low.Y + High.Y : Low.Z + High.Z;

        public Box Join(Box other) => new(
            new Float3(MathF.Min(Low.X, other.Low.X), MathF.Min(Low.Y, other.Low.Y), MathF.Min(Low.Z, other.Low.Z)),
            new Float3(MathF.Max(High.X, other.High.X), MathF.Max(High.Y, other.High.Y), MathF.Max(High.Z, other.High.Z)));
    }
}
