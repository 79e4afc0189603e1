namespace Linewright.Pictures.Transport;

/// <summary>A stone's substance, for the kernel. Columns are offsets into the table of curves; absorption -1: clear.</summary>
internal struct StoneRecord
{
    public int ColumnIndex;
    public int ColumnAbsorption;
    public int Disperses;
    public int FirstFacet;
}
