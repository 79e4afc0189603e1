namespace Linewright.Pictures.Rays;

/// <summary>A faceted body where it stands, for the tracer: its frame, the sphere about its origin, its planes.</summary>
internal unsafe struct PlacedBody
{
    public Turn Frame;
    public float Radius;
    public int Padded;
    public float* Planes;
}
