namespace Linewright.Solids.Meshing;

/// <summary>What simplifying gave.</summary>
/// <param name="Mesh">The mesh.</param>
/// <param name="IsClean">True where no triangles meet where they should not; false only where they did before.</param>
/// <param name="Repeats">How often the work was repeated with parts held fast.</param>
public readonly record struct SimplifyOutcome(Mesh Mesh, bool IsClean, int Repeats);
