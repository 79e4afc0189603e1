namespace Linewright.Solids.Meshing;

/// <summary>What a mesh is as a surface, whatever its shape.</summary>
/// <param name="IsClosed">Every edge has a triangle on both sides.</param>
/// <param name="IsManifold">Every edge has at most two triangles and every vertex one fan of them; no triangle uses a vertex twice.</param>
/// <param name="IsOriented">Triangles that share an edge run it in opposite directions.</param>
/// <param name="Genus">Handles of all components together: 0 for a ball, 1 for a ring. Only for closed, oriented, manifold meshes; else -1.</param>
/// <param name="Components">Number of surfaces that are not joined; an inside hollow counts as one.</param>
/// <param name="EulerCharacteristic">Vertices less edges plus triangles; vertices without a triangle do not count.</param>
public readonly record struct TopologyReport(
    bool IsClosed, bool IsManifold, bool IsOriented, int Genus, int Components, int EulerCharacteristic)
{
    /// <summary>True for a surface that bounds a solid: closed, oriented and 2-manifold.</summary>
    public bool IsSound => IsClosed && IsManifold && IsOriented;
}
