using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>How finely a solid is meshed, mm.</summary>
/// <remarks>
/// The cell is the edge of the grid's cubes: features thinner than a cell may be lost, and the certificate then says
/// how far off the mesh is. Curved surfaces deviate by about cell squared over eight radii.
/// </remarks>
public sealed record MeshSettings
{
    /// <summary>Checks and keeps the three numbers.</summary>
    /// <param name="cellMm">Edge of a grid cell; 0.001 to 10 mm.</param>
    /// <param name="deviationMm">Largest |distance| allowed at vertices, edge midpoints and centroids; above 0.</param>
    /// <param name="simplify">True to spend the deviation on fewer triangles.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public MeshSettings(double cellMm, double deviationMm, bool simplify)
    {
        CellMm = Guard.InRange(cellMm, 1e-3, 10);
        DeviationMm = Guard.Positive(deviationMm);
        Simplify = simplify;
    }

    /// <summary>For the eye, as fast as it goes: 80 um cells; the deviation allowed is one cell.</summary>
    public static MeshSettings Preview { get; } = new(0.08, 0.08, false);

    /// <summary>For checks and close views: 25 um cells, all triangles kept.</summary>
    public static MeshSettings Fine { get; } = new(0.025, 0.01, false);

    /// <summary>For casting files: 25 um cells, simplified within 5 um.</summary>
    /// <remarks>5 um is a tenth of the layer that a wax printer lays. Assumed: layers of 25 to 50 um.</remarks>
    public static MeshSettings Production { get; } = new(0.025, 0.005, true);

    /// <summary>Edge of a grid cell.</summary>
    public double CellMm { get; }

    /// <summary>Largest |distance| allowed anywhere the certificate looks.</summary>
    public double DeviationMm { get; }

    /// <summary>True to spend the deviation on fewer triangles.</summary>
    public bool Simplify { get; }

    /// <summary>How often the cell may be halved to reach the deviation; each time costs four times the triangles.</summary>
    public int MostHalvings { get; init; } = 2;

    /// <summary>Most blocks of 8 x 8 x 8 cells that the surface may pass through; about 3 kB each while meshing.</summary>
    public int MostBlocks { get; init; } = 100_000;
}
