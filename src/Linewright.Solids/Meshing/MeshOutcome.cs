using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>What meshing a solid gave: a status, the mesh where there is one, and what was measured on it.</summary>
public sealed record MeshOutcome
{
    /// <summary>How it ended.</summary>
    public required MeshStatus Status { get; init; }

    /// <summary>The mesh; empty where the status says that there is none.</summary>
    public Mesh Mesh { get; init; } = new([], []);

    /// <summary>Largest |distance| found at vertices, edge midpoints and centroids of the mesh, mm.</summary>
    public double CertifiedDeviationMm { get; init; }

    /// <summary>Where the largest |distance| was found.</summary>
    public Vec3 WorstAt { get; init; }

    /// <summary>Edge of a cell in the grid that gave this mesh; halved from the settings where it had to be.</summary>
    public double CellMm { get; init; }

    /// <summary>Blocks of 8 x 8 x 8 cells that the surface passes through.</summary>
    public int Blocks { get; init; }

    /// <summary>Cells that the surface passes through.</summary>
    public int SurfaceCells { get; init; }

    /// <summary>Triangles before simplifying.</summary>
    public int FineTriangles { get; init; }

    /// <summary>How often simplifying was repeated with parts held fast to keep triangles from meeting.</summary>
    public int Repeats { get; init; }
}
