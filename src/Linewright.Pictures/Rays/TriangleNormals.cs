namespace Linewright.Pictures.Rays;

/// <summary>Where a triangle faces: as it lies, and at each corner as the smooth surface that it stands for.</summary>
internal struct TriangleNormals
{
    public Float3 Flat;
    public Float3 A;
    public Float3 B;
    public Float3 C;
}
