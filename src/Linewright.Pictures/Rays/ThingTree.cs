using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Pictures.Rays;

/// <summary>All things of a scene: a tree over them, and under each its own tree or its planes.</summary>
/// <remarks>Pointers only, so that it can be handed to a kernel by value; <see cref="ThingForest"/> owns the memory.</remarks>
internal unsafe struct ThingTree
{
    public TreeNode* Nodes;
    public PlacedMesh* Meshes;
    public PlacedBody* Bodies;
    public int MeshCount;

    /// <summary>The first thing that a ray meets before <paramref name="far"/>.</summary>
    /// <param name="o">Start, mm.</param>
    /// <param name="d">Unit direction.</param>
    /// <param name="far">Where to stop looking, mm.</param>
    /// <param name="leaveOut">A thing that is not looked at: the convex body that the ray just left; -1 for none.</param>
    /// <param name="any">True: any thing will do, for shadows.</param>
    [SkipLocalsInit]
    public readonly Encounter Nearest(Float3 o, Float3 d, float far, int leaveOut, bool any)
    {
        var hit = new Encounter { Distance = far, Thing = -1 };
        float rayX = BoxTest.Over(d.X), rayY = BoxTest.Over(d.Y), rayZ = BoxTest.Over(d.Z);
        Vector256<float> overX = Vector256.Create(rayX), overY = Vector256.Create(rayY), overZ = Vector256.Create(rayZ);
        Vector256<float> shiftX = Vector256.Create(-o.X * rayX), shiftY = Vector256.Create(-o.Y * rayY), shiftZ = Vector256.Create(-o.Z * rayZ);
        int nearX = BoxTest.Near(rayX, 0), nearY = BoxTest.Near(rayY, 1), nearZ = BoxTest.Near(rayZ, 2);
        var stack = stackalloc Waiting[2 * TreeWalk.Depth];
        var entries = stackalloc float[TreeNode.Width];
        var waiting = 0;
        var current = 0;
        while (true)
        {
            if (current >= 0)
            {
                var node = Nodes + current;
                var mask = BoxTest.Meet((byte*)node, nearX, nearY, nearZ, overX, overY, overZ, shiftX, shiftY, shiftZ, hit.Distance, out var entry);
                if (mask != 0)
                {
                    var first = BitOperations.TrailingZeroCount(mask);
                    mask &= mask - 1;
                    if (mask == 0)
                    {
                        current = node->Child[first];
                        continue;
                    }

                    entry.Store(entries);
                    current = TreeWalk.Order(node, mask, first, entries, stack, ref waiting);
                    continue;
                }
            }
            else if (~current != leaveOut && Meet(~current, o, d, ref hit, stack + waiting, any))
            {
                hit.Thing = ~current;
                if (any)
                {
                    return hit;
                }
            }

            do
            {
                if (waiting == 0)
                {
                    return hit;
                }

                waiting--;
            }
            while (stack[waiting].Entry > hit.Distance);
            current = stack[waiting].Node;
        }
    }

    private readonly bool Meet(int thing, Float3 o, Float3 d, ref Encounter hit, Waiting* stack, bool any)
    {
        if (thing < MeshCount)
        {
            var mesh = Meshes + thing;
            return TreeWalk.Nearest(mesh->Nodes, mesh->Blocks, mesh->Frame.PointInwards(o), mesh->Frame.Inwards(d), ref hit, stack, any);
        }

        var body = Bodies + (thing - MeshCount);
        var q = o - body->Frame.Origin;
        var b = Float3.Dot(q, d);
        var c = Float3.Dot(q, q) - body->Radius * body->Radius;
        if (b * b < c || (b > 0 && c > 0))
        {
            return false;
        }

        var entry = FacetTracing.Enter(body->Planes, body->Padded, body->Frame.Inwards(q), body->Frame.Inwards(d));
        if (entry.Facet < 0 || entry.Distance >= hit.Distance)
        {
            return false;
        }

        hit.Distance = entry.Distance;
        hit.Piece = entry.Facet;
        return true;
    }
}
