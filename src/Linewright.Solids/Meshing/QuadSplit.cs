namespace Linewright.Solids.Meshing;

/// <summary>How a quad becomes triangles.</summary>
internal enum QuadSplit : byte
{
    /// <summary>Two triangles along the diagonal from A to C.</summary>
    AlongAC,

    /// <summary>Two triangles along the diagonal from B to D.</summary>
    AlongBD,

    /// <summary>A fan about the point where the surface crosses the grid edge.</summary>
    Fan,
}
