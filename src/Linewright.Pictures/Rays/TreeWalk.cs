using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Linewright.Pictures.Rays;

/// <summary>Follows a ray through a tree of triangles, nearest boxes first.</summary>
internal static unsafe class TreeWalk
{
    /// <summary>Nearest triangle before <paramref name="hit"/>'s distance; leaves it as it is where there is none.</summary>
    /// <param name="nodes">The tree.</param>
    /// <param name="blocks">Its leaves.</param>
    /// <param name="o">Start in the mesh's frame, mm.</param>
    /// <param name="d">Unit direction in the mesh's frame.</param>
    /// <param name="hit">Distance, triangle and place on it.</param>
    /// <param name="stack">Room for <see cref="NodeOrder.Depth"/> nodes.</param>
    /// <param name="any">True: the first triangle found will do.</param>
    /// <returns>Whether a triangle was met.</returns>
    [SkipLocalsInit]
    public static bool Nearest(TreeNode* nodes, TriangleBlock* blocks, Vector128<float> o, Vector128<float> d, ref Encounter hit, ulong* stack, bool any)
    {
        var over = BoxTest.Over(d);
        var shift = -(o * over);
        Vector256<float> overX = Vector256.Create(over.ToScalar()), overY = Vector256.Create(over.GetElement(1)), overZ = Vector256.Create(over.GetElement(2));
        Vector256<float> shiftX = Vector256.Create(shift.ToScalar()), shiftY = Vector256.Create(shift.GetElement(1)), shiftZ = Vector256.Create(shift.GetElement(2));
        var (nearX, nearY, nearZ) = BoxTest.Near(over);
        nint farX = nearX ^ 32, farY = nearY ^ 32, farZ = nearZ ^ 32;
        var keys = stackalloc ulong[TreeNode.Width];
        var top = stack;
        var current = 0;
        var met = false;
        var far = hit.Distance;
        while (true)
        {
            if (current >= 0)
            {
                var node = (byte*)nodes + (long)current * TreeNode.Bytes;
                var mask = BoxTest.Meet(node, nearX, nearY, nearZ, farX, farY, farZ, overX, overY, overZ, shiftX, shiftY, shiftZ, far, out var entry);
                if (mask != 0)
                {
                    current = NodeOrder.Next(node, mask, entry, keys, ref top);
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

            ulong next;
            do
            {
                if (top == stack)
                {
                    return met;
                }

                next = *--top;
            }
            while (NodeOrder.Entry(next) > far);
            current = (int)next;
        }
    }

    /// <summary>Eight triangles at once. Source: Möller and Trumbore (1997), Fast, minimum storage ray-triangle intersection.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Block(TriangleBlock* block, Vector128<float> o, Vector128<float> d, ref Encounter hit, float far)
    {
        var b = (float*)block;
        Vector256<float> dx = Vector256.Create(d.ToScalar()), dy = Vector256.Create(d.GetElement(1)), dz = Vector256.Create(d.GetElement(2));
        Vector256<float> ux = Vector256.LoadAligned(b + 24), uy = Vector256.LoadAligned(b + 32), uz = Vector256.LoadAligned(b + 40);
        Vector256<float> vx = Vector256.LoadAligned(b + 48), vy = Vector256.LoadAligned(b + 56), vz = Vector256.LoadAligned(b + 64);
        var px = Crossed(dy, vz, dz, vy);
        var py = Crossed(dz, vx, dx, vz);
        var pz = Crossed(dx, vy, dy, vx);
        var det = Vector256.FusedMultiplyAdd(ux, px, Vector256.FusedMultiplyAdd(uy, py, uz * pz));
        var sign = det & Vector256.Create(-0f);
        var size = Vector256.Abs(det);
        var sx = Vector256.Create(o.ToScalar()) - Vector256.LoadAligned(b);
        var sy = Vector256.Create(o.GetElement(1)) - Vector256.LoadAligned(b + 8);
        var sz = Vector256.Create(o.GetElement(2)) - Vector256.LoadAligned(b + 16);
        var u = Vector256.FusedMultiplyAdd(sx, px, Vector256.FusedMultiplyAdd(sy, py, sz * pz)) ^ sign;
        var qx = Crossed(sy, uz, sz, uy);
        var qy = Crossed(sz, ux, sx, uz);
        var qz = Crossed(sx, uy, sy, ux);
        var v = Vector256.FusedMultiplyAdd(dx, qx, Vector256.FusedMultiplyAdd(dy, qy, dz * qz)) ^ sign;
        var t = Vector256.FusedMultiplyAdd(vx, qx, Vector256.FusedMultiplyAdd(vy, qy, vz * qz)) ^ sign;
        var inside = Vector256.GreaterThanOrEqual(u, Vector256<float>.Zero) & Vector256.GreaterThanOrEqual(v, Vector256<float>.Zero)
            & Vector256.LessThanOrEqual(u + v, size)
            & Vector256.GreaterThan(t, Vector256<float>.Zero) & Vector256.LessThan(t, Vector256.Create(far) * size);
        var mask = inside.ExtractMostSignificantBits();
        if (mask == 0)
        {
            return false;
        }

        var best = BitOperations.TrailingZeroCount(mask);
        mask &= mask - 1;
        var inverse = Vector256<float>.One / size;
        t *= inverse;
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
        hit.U = (u * inverse).GetElement(best);
        hit.V = (v * inverse).GetElement(best);
        hit.Piece = block->Triangle[best];
        return true;
    }

    /// <summary>a b - c d.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Crossed(Vector256<float> a, Vector256<float> b, Vector256<float> c, Vector256<float> d)
        => Fma.IsSupported ? Fma.MultiplySubtract(a, b, c * d) : a * b - c * d;
}
