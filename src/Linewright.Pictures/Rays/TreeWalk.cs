using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Linewright.Pictures.Rays;

/// <summary>Follows a ray through a tree of triangles, nearest boxes first.</summary>
internal static unsafe class TreeWalk
{
    /// <summary>Nodes that can wait at once: seven a level, and no tree of 2^31 triangles is deeper than this allows.</summary>
    internal const int Depth = 192;

    /// <summary>Nearest triangle before <paramref name="hit"/>'s distance; leaves it as it is where there is none.</summary>
    /// <param name="nodes">The tree.</param>
    /// <param name="blocks">Its leaves.</param>
    /// <param name="o">Start in the mesh's frame, mm.</param>
    /// <param name="d">Unit direction in the mesh's frame.</param>
    /// <param name="hit">Distance, triangle and place on it.</param>
    /// <param name="stack">Room for <see cref="Depth"/> nodes.</param>
    /// <param name="any">True: the first triangle found will do.</param>
    /// <returns>Whether a triangle was met.</returns>
    [SkipLocalsInit]
    public static bool Nearest(TreeNode* nodes, TriangleBlock* blocks, Float3 o, Float3 d, ref Encounter hit, Waiting* stack, bool any)
    {
        float rayX = BoxTest.Over(d.X), rayY = BoxTest.Over(d.Y), rayZ = BoxTest.Over(d.Z);
        Vector256<float> overX = Vector256.Create(rayX), overY = Vector256.Create(rayY), overZ = Vector256.Create(rayZ);
        Vector256<float> shiftX = Vector256.Create(-o.X * rayX), shiftY = Vector256.Create(-o.Y * rayY), shiftZ = Vector256.Create(-o.Z * rayZ);
        int nearX = BoxTest.Near(rayX, 0), nearY = BoxTest.Near(rayY, 1), nearZ = BoxTest.Near(rayZ, 2);
        var entries = stackalloc float[TreeNode.Width];
        var waiting = 0;
        var current = 0;
        var met = false;
        var far = hit.Distance;
        while (true)
        {
            if (current >= 0)
            {
                var node = nodes + current;
                var mask = BoxTest.Meet((byte*)node, nearX, nearY, nearZ, overX, overY, overZ, shiftX, shiftY, shiftZ, far, out var entry);
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
                    current = Order(node, mask, first, entries, stack, ref waiting);
                    continue;
                }
            }
            else if (Block(blocks + ~current, o, d, ref hit, far))
            {
                met = true;
                far = hit.Distance;
                if (any)
                {
                    return true;
                }
            }

            do
            {
                if (waiting == 0)
                {
                    return met;
                }

                waiting--;
            }
            while (stack[waiting].Entry > far);
            current = stack[waiting].Node;
        }
    }

    /// <summary>Puts all but the nearest of the boxes met on the stack, farthest lowest, and returns the nearest.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static int Order(TreeNode* node, uint others, int first, float* entries, Waiting* stack, ref int waiting)
    {
        var second = BitOperations.TrailingZeroCount(others);
        others &= others - 1;
        if (others == 0)
        {
            var swap = entries[second] < entries[first];
            int near = swap ? second : first, later = swap ? first : second;
            stack[waiting].Node = node->Child[later];
            stack[waiting].Entry = entries[later];
            waiting++;
            return node->Child[near];
        }

        var floor = waiting;
        stack[waiting].Node = node->Child[first];
        stack[waiting].Entry = entries[first];
        waiting++;
        Insert(stack, floor, waiting++, node->Child[second], entries[second]);
        do
        {
            var next = BitOperations.TrailingZeroCount(others);
            others &= others - 1;
            Insert(stack, floor, waiting++, node->Child[next], entries[next]);
        }
        while (others != 0);
        return stack[--waiting].Node;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Insert(Waiting* stack, int floor, int at, int node, float entry)
    {
        while (at > floor && stack[at - 1].Entry < entry)
        {
            stack[at] = stack[at - 1];
            at--;
        }

        stack[at].Node = node;
        stack[at].Entry = entry;
    }

    /// <summary>Eight triangles at once. Source: Möller and Trumbore (1997), Fast, minimum storage ray-triangle intersection.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Block(TriangleBlock* block, Float3 o, Float3 d, ref Encounter hit, float far)
    {
        var b = (float*)block;
        Vector256<float> dx = Vector256.Create(d.X), dy = Vector256.Create(d.Y), dz = Vector256.Create(d.Z);
        Vector256<float> ux = Vector256.LoadAligned(b + 24), uy = Vector256.LoadAligned(b + 32), uz = Vector256.LoadAligned(b + 40);
        Vector256<float> vx = Vector256.LoadAligned(b + 48), vy = Vector256.LoadAligned(b + 56), vz = Vector256.LoadAligned(b + 64);
        var px = Crossed(dy, vz, dz, vy);
        var py = Crossed(dz, vx, dx, vz);
        var pz = Crossed(dx, vy, dy, vx);
        var inverse = Vector256<float>.One / Vector256.FusedMultiplyAdd(ux, px, Vector256.FusedMultiplyAdd(uy, py, uz * pz));
        var sx = Vector256.Create(o.X) - Vector256.LoadAligned(b);
        var sy = Vector256.Create(o.Y) - Vector256.LoadAligned(b + 8);
        var sz = Vector256.Create(o.Z) - Vector256.LoadAligned(b + 16);
        var u = Vector256.FusedMultiplyAdd(sx, px, Vector256.FusedMultiplyAdd(sy, py, sz * pz)) * inverse;
        var qx = Crossed(sy, uz, sz, uy);
        var qy = Crossed(sz, ux, sx, uz);
        var qz = Crossed(sx, uy, sy, ux);
        var v = Vector256.FusedMultiplyAdd(dx, qx, Vector256.FusedMultiplyAdd(dy, qy, dz * qz)) * inverse;
        var t = Vector256.FusedMultiplyAdd(vx, qx, Vector256.FusedMultiplyAdd(vy, qy, vz * qz)) * inverse;
        var inside = Vector256.GreaterThanOrEqual(u, Vector256<float>.Zero) & Vector256.GreaterThanOrEqual(v, Vector256<float>.Zero)
            & Vector256.LessThanOrEqual(u + v, Vector256<float>.One)
            & Vector256.GreaterThan(t, Vector256<float>.Zero) & Vector256.LessThan(t, Vector256.Create(far));
        var mask = inside.ExtractMostSignificantBits();
        if (mask == 0)
        {
            return false;
        }

        var best = BitOperations.TrailingZeroCount(mask);
        mask &= mask - 1;
        while (mask != 0)
        {
            var next = BitOperations.TrailingZeroCount(mask);
            mask &= mask - 1;
            if (t.GetElement(next) < t.GetElement(best))
            {
                best = next;
            }
        }

        hit.Distance = t.GetElement(best);
        hit.U = u.GetElement(best);
        hit.V = v.GetElement(best);
        hit.Piece = block->Triangle[best];
        return true;
    }

    /// <summary>a b - c d.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Crossed(Vector256<float> a, Vector256<float> b, Vector256<float> c, Vector256<float> d)
        => Fma.IsSupported ? Fma.MultiplySubtract(a, b, c * d) : a * b - c * d;
}
