namespace Linewright.Solids.Meshing;

/// <summary>A mesh on its way through the simplifier, with the vertices that must stay and the flat faces of its triangles.</summary>
internal sealed record HeldMesh(float[] Positions, int[] Triangles, bool[] IsHeld, int[] FaceOf)
{
    /// <summary>The same surface without marks.</summary>
    public Mesh ToMesh() => new(Positions, Triangles);
}
