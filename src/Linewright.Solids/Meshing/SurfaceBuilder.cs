using Linewright.Solids.Shapes;

namespace Linewright.Solids.Meshing;

/// <summary>Builds the fine mesh of one grid: find blocks, sample, place vertices, weave quads, add fans.</summary>
internal sealed class SurfaceBuilder(Solid solid, double cell, int mostBlocks, Crew crew)
{
    public MeshOutcome Build()
    {
        if (CellGrid.Over(solid.Bounds, cell) is not { } grid)
        {
            return new MeshOutcome { Status = MeshStatus.TooLarge, CellMm = cell };
        }

        var finder = new BlockFinder(grid, mostBlocks);
        var blocks = finder.Find(solid, crew);
        if (finder.IsTooLarge)
        {
            return new MeshOutcome { Status = MeshStatus.TooLarge, CellMm = cell, Blocks = blocks.Count };
        }

        crew.Run(blocks.Count, (i, arena) => BlockSampler.Sample(blocks[i], grid, arena));
        blocks.RemoveAll(block => block.Cut.Length == 0);
        if (blocks.Count == 0)
        {
            return new MeshOutcome { Status = MeshStatus.Empty, CellMm = cell };
        }

        var byKey = new Dictionary<long, Block>(blocks.Count);
        int vertices = 0, cells = 0;
        foreach (var block in blocks)
        {
            byKey.Add(block.Key, block);
            block.FirstVertex = vertices;
            vertices += block.VertexCount;
            cells += block.Cut.Length;
        }

        var positions = new float[vertices * 3];
        crew.Run(blocks.Count, (i, arena) => VertexPlacer.Place(blocks[i], grid, positions, arena));
        var weaver = new QuadWeaver(grid, byKey, positions);
        crew.Run(blocks.Count, (i, arena) => weaver.Weave(blocks[i], arena));
        return new MeshOutcome
        {
            Status = weaver.IsMissingCells ? MeshStatus.Leaks : MeshStatus.Meshed,
            Mesh = weaver.IsMissingCells ? new Mesh([], []) : Assemble(blocks, grid, positions),
            CellMm = cell,
            Blocks = blocks.Count,
            SurfaceCells = cells,
        };
    }

    private static Mesh Assemble(List<Block> blocks, CellGrid grid, float[] positions)
    {
        var fans = new FanWeaver(grid, positions.Length / 3);
        var flat = 0;
        foreach (var block in blocks)
        {
            foreach (ref readonly var quad in block.Quads.AsSpan())
            {
                if (quad.Split == QuadSplit.Fan)
                {
                    fans.Add(block, in quad);
                }
                else
                {
                    flat++;
                }
            }
        }

        var triangles = new int[flat * 6 + fans.Triangles.Count];
        var at = 0;
        foreach (var block in blocks)
        {
            foreach (ref readonly var quad in block.Quads.AsSpan())
            {
                if (quad.Split == QuadSplit.Fan)
                {
                    continue;
                }

                var (a, b, c, d) = quad.IsTurned ? (quad.A, quad.D, quad.C, quad.B) : (quad.A, quad.B, quad.C, quad.D);
                if (quad.Split == QuadSplit.AlongAC)
                {
                    ReadOnlySpan<int> two = [a, b, c, a, c, d];
                    two.CopyTo(triangles.AsSpan(at));
                }
                else
                {
                    ReadOnlySpan<int> two = [b, c, d, b, d, a];
                    two.CopyTo(triangles.AsSpan(at));
                }

                at += 6;
            }
        }

        fans.Triangles.CopyTo(triangles, at);
        if (fans.Positions.Count == 0)
        {
            return new Mesh(positions, triangles);
        }

        var all = new float[positions.Length + fans.Positions.Count];
        positions.CopyTo(all, 0);
        fans.Positions.CopyTo(all, positions.Length);
        return new Mesh(all, triangles);
    }
}
