using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>The cubic grid that a solid is sampled on: where its corners lie, mm.</summary>
/// <remarks>
/// Corner positions depend on their index alone, so that blocks agree on shared corners to the bit.
/// </remarks>
internal sealed class CellGrid
{
    // Flat faces of parts lie on round numbers: odd offsets keep grid planes from falling into them.
    private const double OffsetX = 1.637, OffsetY = 1.771, OffsetZ = 1.889;

    // Block keys hold 20 bits an axis.
    private const double MostCells = 1 << 20;

    private CellGrid(Bounds box, double cell)
    {
        Cell = (float)cell;
        OriginX = (float)(box.Low.X - OffsetX * cell);
        OriginY = (float)(box.Low.Y - OffsetY * cell);
        OriginZ = (float)(box.Low.Z - OffsetZ * cell);
        CellsX = Count(box.High.X - OriginX);
        CellsY = Count(box.High.Y - OriginY);
        CellsZ = Count(box.High.Z - OriginZ);

        int Count(double length) => (int)Math.Ceiling(length / cell + 1.5) + 1;
    }

    public float Cell { get; }

    public float OriginX { get; }

    public float OriginY { get; }

    public float OriginZ { get; }

    public int CellsX { get; }

    public int CellsY { get; }

    public int CellsZ { get; }

    /// <summary>The grid over a box with a margin of more than one cell all round; null where it has too many cells an axis.</summary>
    public static CellGrid? Over(Bounds box, double cell)
        => Math.Max(box.Size.X, Math.Max(box.Size.Y, box.Size.Z)) / cell < MostCells - 8 ? new CellGrid(box, cell) : null;

    public float X(int corner) => OriginX + corner * Cell;

    public float Y(int corner) => OriginY + corner * Cell;

    public float Z(int corner) => OriginZ + corner * Cell;

    /// <summary>Coordinate of a corner along an axis: 0 x, 1 y, 2 z.</summary>
    public float Along(int axis, int corner) => axis == 0 ? X(corner) : axis == 1 ? Y(corner) : Z(corner);
}
