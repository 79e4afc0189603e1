using System.Numerics;
using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;

namespace Linewright.Solids.Meshing;

/// <summary>Samples a block's corners in one batch and lists the cells that the surface cuts.</summary>
internal static class BlockSampler
{
    private const int Rows = Block.Side * Block.Side;
    private const uint AllInside = (1u << Block.Side) - 1;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Sample(Block block, CellGrid grid, Arena arena)
    {
        var mark = arena.Mark;
        const int n = Block.PaddedSamples;
        Span<float> x = arena.Take(n), y = arena.Take(n), z = arena.Take(n), distance = arena.Take(n);
        FillCorners(block, grid, x, y, z);
        block.Local.Distances(x, y, z, distance, arena);

        // One bit a sample: a row of nine samples is one number, and a cell's pattern four pairs of bits.
        Span<uint> rows = stackalloc uint[Rows];
        uint any = 0, all = AllInside;
        for (int row = 0, i = 0; row < Rows; row++)
        {
            uint bits = 0;
            for (var along = 0; along < Block.Side; along++)
            {
                bits |= (distance[i++] < 0 ? 1u : 0u) << along;
            }

            rows[row] = bits;
            any |= bits;
            all &= bits;
        }

        if (any != 0 && all != AllInside)
        {
            Span<short> cut = stackalloc short[512];
            Span<byte> pattern = stackalloc byte[512];
            var count = ListCut(rows, cut, pattern);
            if (count > 0)
            {
                Keep(block, grid, cut[..count], pattern[..count]);
                block.Distances = distance.ToArray();
            }
        }

        arena.Release(mark);
    }

    private static void FillCorners(Block block, CellGrid grid, Span<float> x, Span<float> y, Span<float> z)
    {
        int i = 0;
        for (var k = 0; k < Block.Side; k++)
        {
            var pz = grid.Z(block.Z * Block.Cells + k);
            for (var j = 0; j < Block.Side; j++)
            {
                var py = grid.Y(block.Y * Block.Cells + j);
                for (var along = 0; along < Block.Side; along++, i++)
                {
                    x[i] = grid.X(block.X * Block.Cells + along);
                    y[i] = py;
                    z[i] = pz;
                }
            }
        }

        x[i..].Fill(x[0]);
        y[i..].Fill(y[0]);
        z[i..].Fill(z[0]);
    }

    private static int ListCut(ReadOnlySpan<uint> rows, Span<short> cut, Span<byte> pattern)
    {
        var count = 0;
        for (var k = 0; k < Block.Cells; k++)
        {
            for (var j = 0; j < Block.Cells; j++)
            {
                var at = k * Block.Side + j;
                uint r0 = rows[at], r1 = rows[at + 1], r2 = rows[at + Block.Side], r3 = rows[at + Block.Side + 1];
                if ((r0 | r1 | r2 | r3) == 0 || (r0 & r1 & r2 & r3) == AllInside)
                {
                    continue;
                }

                for (var along = 0; along < Block.Cells; along++)
                {
                    var bits = ((r0 >> along) & 3) | (((r1 >> along) & 3) << 2) | (((r2 >> along) & 3) << 4) | (((r3 >> along) & 3) << 6);
                    if (bits is not (0 or 255))
                    {
                        cut[count] = (short)(k * 64 + j * 8 + along);
                        pattern[count++] = (byte)bits;
                    }
                }
            }
        }

        return count;
    }

    private static void Keep(Block block, CellGrid grid, ReadOnlySpan<short> cut, ReadOnlySpan<byte> pattern)
    {
        block.Cut = cut.ToArray();
        block.Pattern = pattern.ToArray();
        block.SlotOf = new short[512];
        block.SlotOf.AsSpan().Fill(-1);
        block.FirstOf = new int[cut.Length];
        block.Form = new ushort[cut.Length];
        var vertices = 0;
        var sheets = CellTopology.SheetsOf;
        for (var i = 0; i < cut.Length; i++)
        {
            block.SlotOf[cut[i]] = (short)i;
            block.FirstOf[i] = vertices;
            block.Form[i] = (ushort)CellTopology.FormOf(pattern[i], Joined(block, grid, cut[i], CellTopology.AlternatingOf[pattern[i]]));
            vertices += sheets[block.Form[i]];
        }

        block.VertexCount = vertices;
    }

    /// <summary>Which of a cell's alternating faces have their middle inside.</summary>
    private static int Joined(Block block, CellGrid grid, int cell, int alternating)
    {
        var joined = 0;
        for (var rest = alternating; rest != 0; rest &= rest - 1)
        {
            int face = BitOperations.TrailingZeroCount(rest), axis = face >> 1, side = face & 1;
            var x = grid.OriginX + (block.CornerX(cell) + (axis == 0 ? side : 0.5f)) * grid.Cell;
            var y = grid.OriginY + (block.CornerY(cell) + (axis == 1 ? side : 0.5f)) * grid.Cell;
            var z = grid.OriginZ + (block.CornerZ(cell) + (axis == 2 ? side : 0.5f)) * grid.Cell;
            joined |= block.Local.DistanceSingle(x, y, z) < 0 ? 1 << face : 0;
        }

        return joined;
    }
}
