namespace Linewright.Pictures.Rays;

/// <summary>A faceted body's planes as the vector unit reads them: all x, all y, all z, all offsets, all numbers; pointers only.</summary>
/// <remarks><see cref="FacetBody"/> makes them, and says how they are ordered.</remarks>
internal unsafe struct FacetPlanes
{
    /// <summary>5 x <see cref="Padded"/> numbers.</summary>
    public float* Numbers;

    /// <summary>Planes, a multiple of 16.</summary>
    public int Padded;

    /// <summary>Planes that every ray is held against; those behind stand upright round the girdle. A multiple of 16.</summary>
    public int Core;

    /// <summary>Square of the radius about the z axis within which no plane behind <see cref="Core"/> can lie, mm2.</summary>
    public float Within;

    /// <summary>Of the sphere about the origin that holds the body, mm.</summary>
    public float Radius;

    /// <summary>Unit normal of a facet, outwards.</summary>
    public readonly Float3 Normal(int facet) => new(Numbers[facet], Numbers[Padded + facet], Numbers[2 * Padded + facet]);

    /// <summary>How far a point lies inside a facet's plane, mm.</summary>
    public readonly float Gap(int facet, Float3 p) => Numbers[3 * Padded + facet] - Float3.Dot(Normal(facet), p);

    /// <summary>Whether the planes behind <see cref="Core"/> hold a point in any case.</summary>
    public readonly bool IsWithin(Float3 p) => p.X * p.X + p.Y * p.Y <= Within;
}
