namespace Linewright.Solids.Meshing;

/// <summary>A mesh on its way through the simplifier, with the vertices that must stay and the triangles in flat faces.</summary>
internal sealed record HeldMesh(float[] Positions, int[] Triangles, bool[] IsHeld, bool[] IsFlat);
