using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;

namespace Linewright.Solids.Meshing;

/// <summary>Where the surface crosses the grid edges of a block, all found in a few batches.</summary>
/// <remarks>
/// One step of false position is not enough where the distance has a kink: it chamfered sharp edges by half a cell.
/// The Illinois rule, with a bisection every second step, closes those few edges; the rest are done after one look.
/// Source: M. Dowell and P. Jarratt (1971), A modified regula falsi method, BIT 11 (the Illinois rule).
/// </remarks>
internal ref struct EdgeCrossings
{
    private const int MostSteps = 8;

    // A crossing is good when the distance there is below this part of a cell: the tangent plane takes up the rest.
    private const float Tolerance = 0.002f;

    // Crossings keep this far, in cells, from the grid's corners, so that no two vertices fall together.
    private const float Margin = 0.02f;
    private const int BisectionSteps = 16;

    /// <summary>Crossing points; past <see cref="Count"/> the first one again, up to whole batches.</summary>
    public Span<float> X, Y, Z;

    /// <summary>Number of crossings.</summary>
    public int Count;

    private Span<int> numberOf; // by sample * 3 + axis
    private Span<int> edgeOf;
    private Span<float> along;

    /// <summary>Number of crossings rounded up to whole batches.</summary>
    public readonly int Padded => X.Length;

    /// <summary>Finds them all; the memory stays taken in the arena.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static EdgeCrossings Find(Block block, CellGrid grid, Arena arena)
    {
        var most = Pad(Math.Min(Block.Samples * 3, block.Cut.Length * CellTopology.Edges));
        var result = new EdgeCrossings
        {
            X = arena.Take(most),
            Y = arena.Take(most),
            Z = arena.Take(most),
            along = arena.Take(most),
            edgeOf = MemoryMarshal.Cast<float, int>(arena.Take(most)),
            numberOf = MemoryMarshal.Cast<float, int>(arena.Take(Block.Samples * 3)),
        };
        var mark = arena.Mark;
        Span<float> atStart = arena.Take(most), atEnd = arena.Take(most);
        result.Collect(block, atStart, atEnd);
        var padded = Pad(result.Count);
        result.X = result.X[..padded];
        result.Y = result.Y[..padded];
        result.Z = result.Z[..padded];
        for (var i = 0; i < result.Count; i++)
        {
            result.Put(i, block, grid);
        }

        result.X[result.Count..].Fill(result.X[0]);
        result.Y[result.Count..].Fill(result.Y[0]);
        result.Z[result.Count..].Fill(result.Z[0]);
        result.Close(block, grid, atStart, atEnd, arena);
        arena.Release(mark);
        return result;
    }

    /// <summary>Where the surface crosses one grid edge, by bisection; the same whichever block asks.</summary>
    public static (float X, float Y, float Z) Bisect(CellGrid grid, Solid local, int cornerX, int cornerY, int cornerZ, int axis)
    {
        float x = grid.X(cornerX), y = grid.Y(cornerY), z = grid.Z(cornerZ), low = Margin, high = 1 - Margin;
        var startInside = local.DistanceSingle(x, y, z) < 0;
        for (var i = 0; i < BisectionSteps; i++)
        {
            var middle = 0.5f * (low + high);
            var (px, py, pz) = At(middle);
            if (local.DistanceSingle(px, py, pz) < 0 == startInside)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return At(0.5f * (low + high));

        (float X, float Y, float Z) At(float part)
        {
            var step = part * grid.Cell;
            return axis switch { 0 => (x + step, y, z), 1 => (x, y + step, z), _ => (x, y, z + step) };
        }
    }

    /// <summary>The crossing on edge e of the cell whose low corner is the sample given.</summary>
    public readonly int NumberOf(int sample, int edge)
    {
        var corner = CellTopology.StartOf[edge];
        return numberOf[(sample + (corner & 1) + ((corner >> 1) & 1) * Block.Side + (corner >> 2) * (Block.Side * Block.Side)) * 3 + (edge >> 2)];
    }

    /// <summary>The sample at the low corner of a cell.</summary>
    public static int SampleOf(int cell) => (cell >> 6) * (Block.Side * Block.Side) + ((cell >> 3) & 7) * Block.Side + (cell & 7);

    /// <summary>The next multiple of a batch's step.</summary>
    public static int Pad(int count) => (count + Solid.BatchStep - 1) & ~(Solid.BatchStep - 1);

    private void Collect(Block block, Span<float> atStart, Span<float> atEnd)
    {
        numberOf.Fill(-1);
        var starts = CellTopology.StartOf;
        var cuts = CellTopology.CutOf;
        var distances = block.Distances;
        for (var i = 0; i < block.Cut.Length; i++)
        {
            var sample = SampleOf(block.Cut[i]);
            for (int rest = cuts[block.Pattern[i]]; rest != 0; rest &= rest - 1)
            {
                var edge = BitOperations.TrailingZeroCount(rest);
                int corner = starts[edge], axis = edge >> 2;
                var start = sample + (corner & 1) + ((corner >> 1) & 1) * Block.Side + (corner >> 2) * (Block.Side * Block.Side);
                var key = start * 3 + axis;
                if (numberOf[key] >= 0)
                {
                    continue;
                }

                numberOf[key] = Count;
                edgeOf[Count] = key;
                float a = distances[start], b = distances[start + (axis == 0 ? 1 : axis == 1 ? Block.Side : Block.Side * Block.Side)];
                (atStart[Count], atEnd[Count], along[Count]) = (a, b, a / (a - b));
                Count++;
            }
        }
    }

    private readonly void Put(int i, Block block, CellGrid grid)
    {
        int sample = edgeOf[i] / 3, axis = edgeOf[i] - sample * 3;
        int k = sample / (Block.Side * Block.Side), j = sample / Block.Side % Block.Side, l = sample % Block.Side;
        var part = along[i];
        X[i] = grid.OriginX + (block.X * Block.Cells + l + (axis == 0 ? part : 0)) * grid.Cell;
        Y[i] = grid.OriginY + (block.Y * Block.Cells + j + (axis == 1 ? part : 0)) * grid.Cell;
        Z[i] = grid.OriginZ + (block.Z * Block.Cells + k + (axis == 2 ? part : 0)) * grid.Cell;
    }

    private readonly void Close(Block block, CellGrid grid, Span<float> atStart, Span<float> atEnd, Arena arena)
    {
        Span<float> low = arena.Take(Padded), high = arena.Take(Padded), distance = arena.Take(Padded);
        Span<float> x = arena.Take(Padded), y = arena.Take(Padded), z = arena.Take(Padded);
        var open = MemoryMarshal.Cast<float, int>(arena.Take(Padded));
        low.Clear();
        high.Fill(1);
        for (var i = 0; i < Count; i++)
        {
            open[i] = i;
        }

        var left = Count;
        var tolerance = Tolerance * grid.Cell;
        for (var step = 0; step < MostSteps && left > 0; step++)
        {
            var n = Pad(left);
            for (var k = 0; k < n; k++)
            {
                var i = open[k < left ? k : 0];
                (x[k], y[k], z[k]) = (X[i], Y[i], Z[i]);
            }

            block.Local.Distances(x[..n], y[..n], z[..n], distance[..n], arena);
            var kept = 0;
            for (var k = 0; k < left; k++)
            {
                var i = open[k];
                var d = distance[k];
                if (MathF.Abs(d) <= tolerance)
                {
                    continue;
                }

                if (d < 0 == atStart[i] < 0)
                {
                    (atStart[i], low[i]) = (d, along[i]);
                    atEnd[i] *= 0.5f;
                }
                else
                {
                    (atEnd[i], high[i]) = (d, along[i]);
                    atStart[i] *= 0.5f;
                }

                var part = (step & 1) == 1 ? 0.5f : atStart[i] / (atStart[i] - atEnd[i]);
                along[i] = low[i] + part * (high[i] - low[i]);
                Put(i, block, grid);
                open[kept++] = i;
            }

            left = kept;
        }
    }
}
