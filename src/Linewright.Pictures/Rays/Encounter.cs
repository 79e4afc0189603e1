namespace Linewright.Pictures.Rays;

/// <summary>What a ray met first.</summary>
internal struct Encounter
{
    /// <summary>Distance along the ray, mm.</summary>
    public float Distance;

    /// <summary>Index of the thing: metal parts first, then stones; -1 for nothing.</summary>
    public int Thing;

    /// <summary>Triangle of the part, or facet of the stone.</summary>
    public int Piece;

    /// <summary>Weight of the triangle's second corner.</summary>
    public float U;

    /// <summary>Weight of the triangle's third corner.</summary>
    public float V;
}
