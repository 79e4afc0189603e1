namespace Linewright.Pictures.Transport;

/// <summary>The surroundings, for the kernel.</summary>
internal struct SkyRecord
{
    /// <summary>Cells along a side of the map by which directions are chosen.</summary>
    public const int Side = 64;

    public float Zenith;
    public float Horizon;
    public float Nadir;
    public int Column;
    public int StripCount;
    public int Seen;
    public float Chance;
}
