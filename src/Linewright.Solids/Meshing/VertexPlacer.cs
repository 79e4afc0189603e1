using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Linewright.Solids.Lanes;

namespace Linewright.Solids.Meshing;

/// <summary>Puts one vertex a sheet into each cut cell, on the edge or corner of the solid where there is one.</summary>
/// <remarks>
/// Three rounds: planes from the crossings on the cell's edges, then from samples drawn towards the vertex found, so
/// that planes on the far side of a curve lose their say. Every vertex stays within its cell: together with the
/// weaving that keeps triangles from meeting. A cell of several sheets takes the mean of each sheet's crossings,
/// which the sheets' hulls keep apart.
/// </remarks>
internal static class VertexPlacer
{
    private const int Rounds = 3;

    // Each round's samples stand at this part of the last one's distance from the vertex.
    private const float Shrink = 0.3f;

    // Vertices keep this far, in cells, from the cell's faces, so that no two fall together.
    private const float Margin = 0.02f;

    /// <summary>Writes the block's vertices into the mesh.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Place(Block block, CellGrid grid, float[] positions, Arena arena)
    {
        var mark = arena.Mark;
        var vertices = positions.AsSpan(block.FirstVertex * 3, block.VertexCount * 3);
        var crossings = EdgeCrossings.Find(block, grid, arena);

        // List each vertex's crossings in one run, with the cell it must stay in.
        var most = EdgeCrossings.Pad(block.Cut.Length * CellTopology.Edges);
        var crossingOf = MemoryMarshal.Cast<float, int>(arena.Take(most));
        var firstOf = MemoryMarshal.Cast<float, int>(arena.Take(block.VertexCount + 1));
        var cellOf = MemoryMarshal.Cast<float, int>(arena.Take(block.VertexCount));
        var total = ListCrossings(block, in crossings, crossingOf, firstOf, cellOf);
        var padded = EdgeCrossings.Pad(total);
        Span<float> x = arena.Take(padded), y = arena.Take(padded), z = arena.Take(padded), d = arena.Take(padded);
        Span<float> gx = arena.Take(padded), gy = arena.Take(padded), gz = arena.Take(padded);
        Span<float> cx = crossings.X, cy = crossings.Y, cz = crossings.Z;

        // First round: crossings are shared by up to four cells; look at each once.
        var n = crossings.Padded;
        block.Local.Gradients(cx, cy, cz, d[..n], gx[..n], gy[..n], gz[..n], arena);
        for (var v = 0; v < block.VertexCount; v++)
        {
            int from = firstOf[v], to = firstOf[v + 1];
            float mx = 0, my = 0, mz = 0;
            for (var i = from; i < to; i++)
            {
                var c = crossingOf[i];
                (mx, my, mz) = (mx + cx[c], my + cy[c], mz + cz[c]);
            }

            var share = 1f / (to - from);
            var fit = new PlaneFit(mx * share, my * share, mz * share);
            for (var i = from; i < to; i++)
            {
                var c = crossingOf[i];
                fit.Add(cx[c], cy[c], cz[c], d[c], gx[c], gy[c], gz[c]);
            }

            Settle(in fit, block, cellOf[v], grid, vertices.Slice(v * 3, 3));
        }

        var pull = 1f;
        for (var round = 1; round < Rounds; round++)
        {
            pull *= Shrink;
            for (var v = 0; v < block.VertexCount; v++)
            {
                float vx = vertices[v * 3], vy = vertices[v * 3 + 1], vz = vertices[v * 3 + 2];
                for (var i = firstOf[v]; i < firstOf[v + 1]; i++)
                {
                    var c = crossingOf[i];
                    x[i] = vx + pull * (cx[c] - vx);
                    y[i] = vy + pull * (cy[c] - vy);
                    z[i] = vz + pull * (cz[c] - vz);
                }
            }

            x[total..].Fill(x[0]);
            y[total..].Fill(y[0]);
            z[total..].Fill(z[0]);
            block.Local.Gradients(x, y, z, d, gx, gy, gz, arena);
            for (var v = 0; v < block.VertexCount; v++)
            {
                var fit = new PlaneFit(vertices[v * 3], vertices[v * 3 + 1], vertices[v * 3 + 2]);
                for (var i = firstOf[v]; i < firstOf[v + 1]; i++)
                {
                    fit.Add(x[i], y[i], z[i], d[i], gx[i], gy[i], gz[i]);
                }

                Settle(in fit, block, cellOf[v], grid, vertices.Slice(v * 3, 3));
            }
        }

        PlaceSeveralSheets(block, grid, vertices);
        arena.Release(mark);
    }

    private static int ListCrossings(
        Block block, in EdgeCrossings crossings, Span<int> crossingOf, Span<int> firstOf, Span<int> cellOf)
    {
        byte[] sheetsOf = CellTopology.SheetsOf, sheetOf = CellTopology.SheetOf;
        var cuts = CellTopology.CutOf;
        int total = 0, vertex = 0;
        for (var i = 0; i < block.Cut.Length; i++)
        {
            int pattern = block.Pattern[i], form = block.Form[i], cell = block.Cut[i], sample = EdgeCrossings.SampleOf(cell);
            for (var sheet = 0; sheet < sheetsOf[form]; sheet++, vertex++)
            {
                firstOf[vertex] = total;
                cellOf[vertex] = cell;
                for (int rest = cuts[pattern]; rest != 0; rest &= rest - 1)
                {
                    var edge = BitOperations.TrailingZeroCount(rest);
                    if (sheetOf[form * CellTopology.Edges + edge] == sheet)
                    {
                        crossingOf[total++] = crossings.NumberOf(sample, edge);
                    }
                }
            }
        }

        firstOf[vertex] = total;
        return total;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Settle(in PlaneFit fit, Block block, int cell, CellGrid grid, Span<float> vertex)
    {
        fit.Solve(out var x, out var y, out var z);
        float margin = Margin * grid.Cell, far = grid.Cell - margin;
        float lowX = grid.X(block.CornerX(cell)), lowY = grid.Y(block.CornerY(cell)), lowZ = grid.Z(block.CornerZ(cell));
        vertex[0] = MathF.Min(MathF.Max(x, lowX + margin), lowX + far);
        vertex[1] = MathF.Min(MathF.Max(y, lowY + margin), lowY + far);
        vertex[2] = MathF.Min(MathF.Max(z, lowZ + margin), lowZ + far);
    }

    private static void PlaceSeveralSheets(Block block, CellGrid grid, Span<float> vertices)
    {
        byte[] sheetsOf = CellTopology.SheetsOf, sheetOf = CellTopology.SheetOf, starts = CellTopology.StartOf;
        for (var i = 0; i < block.Cut.Length; i++)
        {
            int pattern = block.Pattern[i], form = block.Form[i], cell = block.Cut[i];
            for (var sheet = 0; sheetsOf[form] > 1 && sheet < sheetsOf[form]; sheet++)
            {
                float sx = 0, sy = 0, sz = 0;
                var count = 0;
                for (int rest = CellTopology.CutOf[pattern]; rest != 0; rest &= rest - 1)
                {
                    var edge = BitOperations.TrailingZeroCount(rest);
                    if (sheetOf[form * CellTopology.Edges + edge] != sheet)
                    {
                        continue;
                    }

                    var corner = starts[edge];
                    var (x, y, z) = EdgeCrossings.Bisect(
                        grid,
                        block.Local,
                        block.CornerX(cell) + (corner & 1),
                        block.CornerY(cell) + ((corner >> 1) & 1),
                        block.CornerZ(cell) + (corner >> 2),
                        edge >> 2);
                    (sx, sy, sz) = (sx + x, sy + y, sz + z);
                    count++;
                }

                var v = (block.FirstOf[i] + sheet) * 3;
                (vertices[v], vertices[v + 1], vertices[v + 2]) = (sx / count, sy / count, sz / count);
            }
        }
    }
}
