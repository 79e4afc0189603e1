namespace Linewright.Pictures.Rays;

/// <summary>A mesh where it stands, for the tracer: its frame, for single numbers and for vectors, and its tree.</summary>
internal unsafe struct PlacedMesh
{
    public Turn Frame;
    public WideTurn Into;
    public TreeNode* Nodes;
    public TriangleBlock* Blocks;
    public TriangleNormals* Normals;
}
