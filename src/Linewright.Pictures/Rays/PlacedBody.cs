namespace Linewright.Pictures.Rays;

/// <summary>A faceted body where it stands, for the tracer: its frame and its planes.</summary>
internal struct PlacedBody
{
    public Turn Frame;
    public FacetPlanes Planes;
}
