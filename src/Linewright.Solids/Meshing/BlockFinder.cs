using Linewright.Solids.Shapes;

namespace Linewright.Solids.Meshing;

/// <summary>Finds the blocks that the surface may pass through, by halving space.</summary>
/// <remarks>
/// The distance never overstates: where it exceeds half a cube's diagonal at the cube's centre, the surface is not
/// in the cube. Operands that cannot matter in a cube and one cell around it are dropped on the way down.
/// </remarks>
internal sealed class BlockFinder(CellGrid grid, int mostBlocks)
{
    // Rounding of a float distance: this much for parts of 100 mm, and in proportion beyond.
    private const float Slack = 1e-4f;
    private const float HalfDiagonal = 0.8660255f; // half the square root of three, rounded up
    private int found;

    /// <summary>True once more blocks were found than allowed.</summary>
    public bool IsTooLarge => Volatile.Read(ref found) > mostBlocks;

    /// <summary>The blocks, in an order that depends on the grid alone.</summary>
    public List<Block> Find(Solid solid, Crew crew)
    {
        var size = Block.Cells;
        while (size < Math.Max(grid.CellsX, Math.Max(grid.CellsY, grid.CellsZ)))
        {
            size *= 2;
        }

        // Hand out the eighths of eighths; smaller grids are not worth a thread each.
        int part = Math.Max(size / 4, Block.Cells), along = size / part;
        var parts = new List<Block>[along * along * along];
        crew.Run(parts.Length, (i, _) =>
        {
            parts[i] = [];
            Descend(i % along * part, i / along % along * part, i / (along * along) * part, part, solid, parts[i]);
        });
        var blocks = new List<Block>();
        foreach (var list in parts)
        {
            blocks.AddRange(list);
        }

        return blocks;
    }

    private void Descend(int x, int y, int z, int size, Solid solid, List<Block> into)
    {
        if (x >= grid.CellsX || y >= grid.CellsY || z >= grid.CellsZ || IsTooLarge)
        {
            return;
        }

        var half = size * 0.5f;
        float cx = grid.OriginX + (x + half) * grid.Cell, cy = grid.OriginY + (y + half) * grid.Cell, cz = grid.OriginZ + (z + half) * grid.Cell;
        var local = solid.Near(cx, cy, cz, (size + 2) * grid.Cell * HalfDiagonal, out var distance);
        var slack = Slack + 1e-6f * MathF.Max(MathF.Abs(cx), MathF.Max(MathF.Abs(cy), MathF.Abs(cz)));
        if (!(MathF.Abs(distance) <= size * grid.Cell * HalfDiagonal + slack))
        {
            return;
        }

        if (size == Block.Cells)
        {
            Interlocked.Increment(ref found);
            into.Add(new Block(x / Block.Cells, y / Block.Cells, z / Block.Cells, local));
            return;
        }

        var step = size / 2;
        for (var child = 0; child < 8; child++)
        {
            Descend(x + (child & 1) * step, y + ((child >> 1) & 1) * step, z + (child >> 2) * step, step, local, into);
        }
    }
}
