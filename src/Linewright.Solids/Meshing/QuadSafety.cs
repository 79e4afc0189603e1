using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Whether the two triangles of a quad stay within the tetrahedra between its grid edge and its sides.</summary>
/// <remarks>
/// Seen along the grid edge (the origin of the plane), the diagonal p r leaves the origin in one of the triangles,
/// p q r; the other, p r s, must then not reach past the edge. Heights along the edge run from 0 to 1: triangle p q r
/// must cross the edge itself, and the diagonal must pass between the edge and s within the tetrahedra's walls.
/// </remarks>
internal static class QuadSafety
{
    // Lengths are in cells: a thousandth stays far above the rounding of float positions.
    private const float Margin = 1e-3f;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool IsSafe(in Quad quad, bool alongAC, Block block, CellGrid grid, float[] positions)
    {
        var (i0, i1, i2, i3) = alongAC ? (quad.A, quad.B, quad.C, quad.D) : (quad.B, quad.C, quad.D, quad.A);
        int axis = quad.Axis, u = (axis + 1) % 3, v = (axis + 2) % 3;
        float originU = grid.Along(u, Corner(block, quad.Cell, u)), originV = grid.Along(v, Corner(block, quad.Cell, v));
        float origin = grid.Along(axis, Corner(block, quad.Cell, axis)), scale = 1 / grid.Cell;
        float px = (positions[i0 * 3 + u] - originU) * scale, py = (positions[i0 * 3 + v] - originV) * scale, pz = (positions[i0 * 3 + axis] - origin) * scale;
        float qx = (positions[i1 * 3 + u] - originU) * scale, qy = (positions[i1 * 3 + v] - originV) * scale, qz = (positions[i1 * 3 + axis] - origin) * scale;
        float rx = (positions[i2 * 3 + u] - originU) * scale, ry = (positions[i2 * 3 + v] - originV) * scale, rz = (positions[i2 * 3 + axis] - origin) * scale;
        float sx = (positions[i3 * 3 + u] - originU) * scale, sy = (positions[i3 * 3 + v] - originV) * scale, sz = (positions[i3 * 3 + axis] - origin) * scale;

        // Let q be the corner on the origin's side of the diagonal.
        float sideOrigin = (ry - py) * px - (rx - px) * py, sideQ = (rx - px) * (qy - py) - (ry - py) * (qx - px);
        if (!(sideOrigin * sideQ > 0))
        {
            (qx, qy, qz, sx, sy, sz) = (sx, sy, sz, qx, qy, qz);
            sideQ = (rx - px) * (qy - py) - (ry - py) * (qx - px);
            if (!(sideOrigin * sideQ > 0))
            {
                return false;
            }
        }

        // Height at which triangle p q r crosses the grid edge.
        float weightQ = sideOrigin / sideQ;
        float weightP = (-(rx - qx) * qy + (ry - qy) * qx) / ((rx - qx) * (py - qy) - (ry - qy) * (px - qx));
        var weightR = 1 - weightP - weightQ;
        if (!(weightP > 0 && weightQ > 0 && weightR > 0))
        {
            return false;
        }

        var height = weightP * pz + weightQ * qz + weightR * rz;
        if (!(height > Margin && height < 1 - Margin))
        {
            return false;
        }

        // Where the diagonal passes the half-plane through the grid edge and s.
        float crossP = sx * py - sy * px, crossR = sx * ry - sy * rx, part = crossP / (crossP - crossR);
        if (!(part > 0 && part < 1))
        {
            return false;
        }

        float mx = px + part * (rx - px), my = py + part * (ry - py), mz = pz + part * (rz - pz);
        var towards = (mx * sx + my * sy) / (sx * sx + sy * sy);
        return towards > 0 && towards < 1
            && mz > towards * sz + Margin * (1 - towards)
            && mz < 1 - towards * (1 - sz) - Margin * (1 - towards);
    }

    private static int Corner(Block block, int cell, int axis)
        => axis == 0 ? block.CornerX(cell) : axis == 1 ? block.CornerY(cell) : block.CornerZ(cell);
}
