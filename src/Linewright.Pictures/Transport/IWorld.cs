using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>What a path asks of the scene. One implementation for each kind of processor.</summary>
/// <remarks>
/// The path's own code is generic over a struct that implements this, holds numbers only and calls nothing that a graphics
/// processor lacks, so that one source serves them all. Implementations must not hold references to managed objects.
/// </remarks>
internal interface IWorld
{
    /// <summary>First thing on a ray; <paramref name="leaveOut"/> is not looked at (-1: nothing is left out).</summary>
    Encounter Nearest(Float3 origin, Float3 direction, float far, int leaveOut);

    /// <summary>Whether anything stands on a ray before <paramref name="far"/>.</summary>
    bool IsBlocked(Float3 origin, Float3 direction, float far);

    /// <summary>Where a ray inside a stone meets its surface; all in the stone's frame.</summary>
    FacetHit Leave(int stone, Float3 origin, Float3 direction);

    /// <summary>Plane of a stone's facet, in the stone's frame.</summary>
    Float4 Facet(int stone, int facet);

    /// <summary>A stone's frame.</summary>
    ref readonly Turn StoneFrame(int stone);

    /// <summary>A metal part's frame.</summary>
    ref readonly Turn MetalFrame(int metal);

    /// <summary>Normals of a part's triangle, in the part's frame.</summary>
    ref readonly TriangleNormals Normals(int metal, int triangle);

    /// <summary>A metal part's surface.</summary>
    ref readonly MetalRecord Metal(int metal);

    /// <summary>A stone's substance.</summary>
    ref readonly StoneRecord Stone(int stone);

    /// <summary>A rectangle of light.</summary>
    ref readonly LampRecord Lamp(int lamp);

    /// <summary>A strip of the surroundings.</summary>
    ref readonly StripRecord Strip(int strip);

    /// <summary>A cell of the map of the surroundings.</summary>
    ref readonly SkyCell Cell(int cell);

    /// <summary>A wavelength.</summary>
    ref readonly WaveBin Wave(int bin);

    /// <summary>A number from the table of curves: a column's offset plus the bin.</summary>
    float Curve(int place);

    /// <summary>A number from the tables of albedo.</summary>
    float Albedo(int place);

    /// <summary>Direction number of Sobol's sequence.</summary>
    uint SobolNumber(int place);
}
