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
        Vector128<float> start = Vector128.Create(o.X, o.Y, o.Z, 0), way = Vector128.Create(d.X, d.Y, d.Z, 0);
        var over = BoxTest.Over(way);
        var shift = -(start * over);
        Vector256<float> overX = Vector256.Create(over.ToScalar()), overY = Vector256.Create(over.GetElement(1)), overZ = Vector256.Create(over.GetElement(2));
        Vector256<float> shiftX = Vector256.Create(shift.ToScalar()), shiftY = Vector256.Create(shift.GetElement(1)), shiftZ = Vector256.Create(shift.GetElement(2));
        var (nearX, nearY, nearZ) = BoxTest.Near(over);
        nint farX = nearX ^ 32, farY = nearY ^ 32, farZ = nearZ ^ 32;
        var stack = stackalloc ulong[2 * NodeOrder.Depth];
        var keys = stackalloc ulong[TreeNode.Width];
        var top = stack;
        var current = 0;
        while (true)
        {
            if (current >= 0)
            {
                var node = (byte*)Nodes + (long)current * TreeNode.Bytes;
                var mask = BoxTest.Meet(node, nearX, nearY, nearZ, farX, farY, farZ, overX, overY, overZ, shiftX, shiftY, shiftZ, hit.Distance, out var entry);
                if (mask != 0)
                {
                    current = NodeOrder.Next(node, mask, entry, keys, ref top);
                    continue;
                }
            }
            else if (~current != leaveOut && Meet(~current, start, way, o, d, ref hit, top, any))
            {
                hit.Thing = ~current;
                if (any)
                {
                    return hit;
                }
            }

            ulong next;
            do
            {
                if (top == stack)
                {
                    return hit;
                }

                next = *--top;
            }
            while (NodeOrder.Entry(next) > hit.Distance);
            current = (int)next;
        }
    }

    private readonly bool Meet(int thing, Vector128<float> start, Vector128<float> way, Float3 o, Float3 d, ref Encounter hit, ulong* stack, bool any)
    {
        if (thing < MeshCount)
        {
            var mesh = Meshes + thing;
            return TreeWalk.Nearest(mesh->Nodes, mesh->Blocks, mesh->Into.PointInwards(start), mesh->Into.Inwards(way), ref hit, stack, any);
        }

        var body = Bodies + (thing - MeshCount);
        var from = o - body->Frame.Origin;
        var b = Float3.Dot(from, d);
        var c = Float3.Dot(from, from) - body->Planes.Radius * body->Planes.Radius;
        if (b * b < c || (b > 0 && c > 0))
        {
            return false;
        }

        var entry = FacetTracing.Enter(body->Planes, body->Frame.Inwards(from), body->Frame.Inwards(d));
        if (entry.Facet < 0 || entry.Distance >= hit.Distance)
        {
            return false;
        }

        hit.Distance = entry.Distance;
        hit.Piece = entry.Facet;
        return true;
    }
}
