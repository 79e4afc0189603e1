namespace Linewright.Pictures.Transport;

/// <summary>One cell of the map of the surroundings: Walker's alias method chooses a cell in one step.</summary>
/// <remarks>Source: Walker (1977); Vose (1991).</remarks>
internal struct SkyCell
{
    /// <summary>Chance to stay in this cell once it was hit upon.</summary>
    public float Stay;

    /// <summary>The cell to take otherwise.</summary>
    public int Other;

    /// <summary>Density over the map, whose area is 4.</summary>
    public float Density;
}
