namespace Linewright.Making;

/// <summary>One unique part. Volume, surface, triangles and holes are those of its file: as cast and compensated for shrinkage.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="File">Path of its mesh in the folder, with /.</param>
/// <param name="Count">How many the piece needs.</param>
/// <param name="IsCast">False for drawn wire, which is cut to length and not cast.</param>
/// <param name="VolumeMm3">Volume of the mesh in the file.</param>
/// <param name="AreaMm2">Surface of the mesh in the file.</param>
/// <param name="Triangles">Triangles of the mesh in the file.</param>
/// <param name="Genus">Holes through it.</param>
/// <param name="DeviationUm">Largest distance found between the mesh and the true surface.</param>
/// <param name="FinishedMm3">Volume of one as set and polished.</param>
/// <param name="MassG">Metal of one as set and polished.</param>
/// <param name="CastG">Metal of one as it leaves the casting; 0 for drawn wire.</param>
public sealed record PartReport(
    string Name,
    string File,
    int Count,
    bool IsCast,
    double VolumeMm3,
    double AreaMm2,
    int Triangles,
    int Genus,
    double DeviationUm,
    double FinishedMm3,
    double MassG,
    double CastG);
