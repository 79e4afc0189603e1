namespace Linewright.Pictures.Rays;

/// <summary>Where a ray crosses a faceted body's surface; facet -1 where it misses.</summary>
internal struct FacetHit
{
    public float Distance;
    public int Facet;
}
