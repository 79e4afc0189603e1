namespace Linewright.Making;

/// <summary>One unique part, as cast and compensated.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="File">Path of its mesh in the folder, with /.</param>
/// <param name="Count">How many the piece needs.</param>
/// <param name="VolumeMm3">Volume of one.</param>
/// <param name="AreaMm2">Surface of one.</param>
/// <param name="Triangles">Triangles of its mesh.</param>
/// <param name="Genus">Holes through it.</param>
/// <param name="MassG">Metal of one.</param>
public sealed record PartReport(string Name, string File, int Count, double VolumeMm3, double AreaMm2, int Triangles, int Genus, double MassG);
