using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;

namespace Linewright.Solids.Meshing;

/// <summary>Joins the vertices round every cut grid edge to a quad and chooses how it splits.</summary>
/// <remarks>
/// A quad is split by a diagonal only where both triangles stay within the four tetrahedra that its grid edge spans
/// with the quad's sides; those of different grid edges share at most a face, so such triangles never meet. Of two
/// safe diagonals the one whose middle lies nearer to the surface is taken. Everything else becomes a fan.
/// That is an argument for one sheet a cell and was tried on many random solids; it is no proof.
/// </remarks>
internal sealed class QuadWeaver(CellGrid grid, Dictionary<long, Block> blocks, float[] positions)
{
    private int missing;

    /// <summary>True where a quad lacked a cell: the surface went on where no block was kept.</summary>
    public bool IsMissingCells => Volatile.Read(ref missing) != 0;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Weave(Block block, Arena arena)
    {
        var quads = new Quad[block.Cut.Length * 3];
        var count = 0;
        var cuts = CellTopology.CutOf;
        for (var i = 0; i < block.Cut.Length; i++)
        {
            // A block owns the grid edges that start at the low corner of one of its cells: edges 0, 4 and 8.
            int cut = cuts[block.Pattern[i]];
            for (var axis = 0; axis < 3; axis++)
            {
                if (((cut >> (axis * 4)) & 1) == 0)
                {
                    continue;
                }

                if (!Join(block, i, axis, out quads[count]))
                {
                    Interlocked.Exchange(ref missing, 1);
                    return;
                }

                count++;
            }
        }

        block.Quads = quads[..count];
        if (count > 0)
        {
            Split(block, arena);
        }
    }

    /// <summary>Vertex of the sheet through one edge of a cell; the cell is given from the block's corner and may lie outside.</summary>
    private int Vertex(Block block, int x, int y, int z, int edge, out int pattern, out int form)
    {
        var home = block;
        int stepX = x >> 3, stepY = y >> 3, stepZ = z >> 3;
        if ((stepX | stepY | stepZ) != 0
            && !blocks.TryGetValue(Block.KeyOf(block.X + stepX, block.Y + stepY, block.Z + stepZ), out home))
        {
            pattern = form = 0;
            return -1;
        }

        int slot = home.SlotOf[(z & 7) * 64 + (y & 7) * 8 + (x & 7)];
        if (slot < 0)
        {
            pattern = form = 0;
            return -1;
        }

        pattern = home.Pattern[slot];
        form = home.Form[slot];
        return home.FirstVertex + home.FirstOf[slot] + CellTopology.SheetOf[form * CellTopology.Edges + edge];
    }

    private bool Join(Block block, int slot, int axis, out Quad quad)
    {
        int u = (axis + 1) % 3, v = (axis + 2) % 3, cell = block.Cut[slot];
        int x = cell & 7, y = (cell >> 3) & 7, z = cell >> 6;
        int ux = u == 0 ? 1 : 0, uy = u == 1 ? 1 : 0, uz = u == 2 ? 1 : 0, vx = v == 0 ? 1 : 0, vy = v == 1 ? 1 : 0, vz = v == 2 ? 1 : 0;
        var first = axis * 4;
        var a = Vertex(block, x, y, z, first, out var patternA, out var formA);
        var b = Vertex(block, x - ux, y - uy, z - uz, first + 1, out var patternB, out var formB);
        var c = Vertex(block, x - ux - vx, y - uy - vy, z - uz - vz, first + 3, out var patternC, out var formC);
        var d = Vertex(block, x - vx, y - vy, z - vz, first + 2, out var patternD, out var formD);
        quad = default;
        if ((a | b | c | d) < 0)
        {
            return false;
        }

        byte[] sheets = CellTopology.SheetsOf, facesOf = CellTopology.AlternatingOf;
        var several = sheets[formA] > 1 || sheets[formB] > 1 || sheets[formC] > 1 || sheets[formD] > 1;
        var delicate = several || ((facesOf[patternA] | facesOf[patternB] | facesOf[patternC] | facesOf[patternD]) != 0);
        var alternating = 0;
        if (delicate)
        {
            int along = 1 << axis, cu = 1 << u, cv = 1 << v;
            alternating = Alternates(patternA, 0, cv, along) | (Alternates(patternB, cu, 0, along) << 1)
                | (Alternates(patternD, cv, 0, along) << 2) | (Alternates(patternA, 0, cu, along) << 3);
        }

        quad = new Quad(a, b, c, d, (short)cell, (byte)axis, (byte)alternating, (block.Pattern[slot] & 1) == 0, delicate);
        return true;
    }

    /// <summary>1 where the face between two parallel edges of a cell has alternating corners, else 0.</summary>
    private static int Alternates(int pattern, int edge, int other, int along)
    {
        int a = pattern >> edge, b = pattern >> (edge | along), c = pattern >> other, d = pattern >> (other | along);
        return (a ^ b) & (c ^ d) & (a ^ c) & 1;
    }

    private void Split(Block block, Arena arena)
    {
        var quads = block.Quads;
        var mark = arena.Mark;
        var n = EdgeCrossings.Pad(2 * quads.Length);
        Span<float> x = arena.Take(n), y = arena.Take(n), z = arena.Take(n), distance = arena.Take(n);
        for (var i = 0; i < quads.Length; i++)
        {
            ref readonly var quad = ref quads[i];
            Middle(quad.A, quad.C, 2 * i, x, y, z);
            Middle(quad.B, quad.D, 2 * i + 1, x, y, z);
        }

        x[(2 * quads.Length)..].Fill(x[0]);
        y[(2 * quads.Length)..].Fill(y[0]);
        z[(2 * quads.Length)..].Fill(z[0]);
        block.Local.Distances(x, y, z, distance, arena);
        for (var i = 0; i < quads.Length; i++)
        {
            ref var quad = ref quads[i];
            var preferAC = MathF.Abs(distance[2 * i]) <= MathF.Abs(distance[2 * i + 1]);
            quad.Split = quad.IsDelicate ? QuadSplit.Fan
                : QuadSafety.IsSafe(in quad, preferAC, block, grid, positions) ? (preferAC ? QuadSplit.AlongAC : QuadSplit.AlongBD)
                : QuadSafety.IsSafe(in quad, !preferAC, block, grid, positions) ? (preferAC ? QuadSplit.AlongBD : QuadSplit.AlongAC)
                : QuadSplit.Fan;
        }

        arena.Release(mark);
    }

    private void Middle(int from, int to, int at, Span<float> x, Span<float> y, Span<float> z)
    {
        var p = positions;
        x[at] = 0.5f * (p[from * 3] + p[to * 3]);
        y[at] = 0.5f * (p[from * 3 + 1] + p[to * 3 + 1]);
        z[at] = 0.5f * (p[from * 3 + 2] + p[to * 3 + 2]);
    }
}
