using Linewright.Solids.Shapes;

namespace Linewright.Solids.Meshing;

/// <summary>8 x 8 x 8 cells that the surface may pass through, and what each stage of meshing found in them.</summary>
internal sealed class Block(int x, int y, int z, Solid local)
{
    /// <summary>Cells along an edge.</summary>
    public const int Cells = 8;

    /// <summary>Samples along an edge: both ends count.</summary>
    public const int Side = Cells + 1;

    /// <summary>Samples in the block.</summary>
    public const int Samples = Side * Side * Side;

    /// <summary>Samples rounded up to whole batches.</summary>
    public const int PaddedSamples = (Samples + Solid.BatchStep - 1) / Solid.BatchStep * Solid.BatchStep;

    /// <summary>Place in the grid, counted in blocks.</summary>
    public int X { get; } = x;

    public int Y { get; } = y;

    public int Z { get; } = z;

    /// <summary>The solid with all that cannot matter in this block and one cell around it taken out.</summary>
    public Solid Local { get; } = local;

    /// <summary>Distance at each sample, x fastest.</summary>
    public float[] Distances { get; set; } = [];

    /// <summary>Cells that the surface cuts, as x + 8 y + 64 z, ascending.</summary>
    public short[] Cut { get; set; } = [];

    /// <summary>Sign pattern of each cut cell.</summary>
    public byte[] Pattern { get; set; } = [];

    /// <summary>Form of each cut cell: its pattern and how its alternating faces are decided.</summary>
    public ushort[] Form { get; set; } = [];

    /// <summary>Place in <see cref="Cut"/> of each of the 512 cells, -1 where it is not cut.</summary>
    public short[] SlotOf { get; set; } = [];

    /// <summary>First vertex of each cut cell, counted within the block.</summary>
    public int[] FirstOf { get; set; } = [];

    /// <summary>Vertices of the block.</summary>
    public int VertexCount { get; set; }

    /// <summary>First vertex of the block in the mesh.</summary>
    public int FirstVertex { get; set; }

    /// <summary>Quads woven round the grid edges that this block owns.</summary>
    public Quad[] Quads { get; set; } = [];

    /// <summary>One number for the place in the grid.</summary>
    public long Key => KeyOf(X, Y, Z);

    public static long KeyOf(int x, int y, int z) => ((long)x << 42) | ((long)y << 21) | (uint)z;

    public int CornerX(int cell) => X * Cells + (cell & 7);

    public int CornerY(int cell) => Y * Cells + ((cell >> 3) & 7);

    public int CornerZ(int cell) => Z * Cells + (cell >> 6);
}
