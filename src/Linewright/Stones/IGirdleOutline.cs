namespace Linewright.Stones;

/// <summary>A stone's girdle seen from above, in mm about the stone's axis: what claws, rails and gaps are placed by.</summary>
/// <remarks>Convex. Azimuths in radians from x (along the line) towards y (across it).</remarks>
public interface IGirdleOutline
{
    /// <summary>Distance from the axis to the outline in a direction.</summary>
    double RadiusMm(double azimuth);

    /// <summary>Distance from the axis to the line that touches the outline square to a direction: half the room the stone takes there.</summary>
    double SupportMm(double azimuth);

    /// <summary>Length once round.</summary>
    double PerimeterMm { get; }
}
