namespace Linewright.Pictures.Rays;

/// <summary>A mesh where it stands, for the tracer: its frame and its tree.</summary>
internal unsafe struct PlacedMesh
{
    public Turn Frame;
    public TreeNode* Nodes;
    public TriangleBlock* Blocks;
    public TriangleNormals* Normals;
}
