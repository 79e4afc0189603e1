namespace Linewright.Pictures.Rays;

/// <summary>A plane: unit normal outwards and its distance from the origin along it.</summary>
internal struct Float4(float x, float y, float z, float w)
{
    public float X = x;
    public float Y = y;
    public float Z = z;
    public float W = w;
}
