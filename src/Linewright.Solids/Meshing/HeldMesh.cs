namespace Linewright.Solids.Meshing;

/// <summary>A mesh on its way through the simplifier, with the vertices that must stay where they are.</summary>
internal sealed record HeldMesh(float[] Positions, int[] Triangles, bool[] IsHeld);
