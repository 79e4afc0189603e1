namespace Linewright.Solids.Meshing;

/// <summary>Four vertices, one in each cell round a cut grid edge, in cyclic order round the edge's axis (right-handed).</summary>
/// <param name="A">Vertex in the cell on the high side of both other axes.</param>
/// <param name="B">Vertex in the next cell round.</param>
/// <param name="C">Vertex in the opposite cell.</param>
/// <param name="D">Vertex in the last cell round.</param>
/// <param name="Cell">The owning cell in its block.</param>
/// <param name="Axis">Axis of the grid edge.</param>
/// <param name="Alternating">Bit m set where the step from vertex m to the next goes through a face whose corners alternate.</param>
/// <param name="IsTurned">True where the edge's start is outside: the triangles then run the other way round.</param>
/// <param name="IsDelicate">True where a cell round the edge has several sheets or a face whose corners alternate.</param>
internal record struct Quad(
    int A, int B, int C, int D, short Cell, byte Axis, byte Alternating, bool IsTurned, bool IsDelicate)
{
    /// <summary>How the quad becomes triangles.</summary>
    public QuadSplit Split { get; set; }
}
