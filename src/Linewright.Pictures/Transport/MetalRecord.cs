using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A metal part's surface, for the kernel. Columns are offsets into the table of curves.</summary>
internal struct MetalRecord
{
    public float Along;
    public float Across;
    public int Albedo;
    public Float3 Lines;
    public float Waviness;
    public int ColumnN;
    public int ColumnK;
    public int ColumnNormal;
    public Float3 Colour;
}
