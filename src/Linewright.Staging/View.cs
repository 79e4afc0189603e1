using Linewright.Solids.Space;

namespace Linewright.Staging;

/// <summary>From where a scene is looked at.</summary>
/// <param name="AzimuthDeg">Round the upright, 0 from the front (towards +y), above 0 from the right.</param>
/// <param name="ElevationDeg">Over the ground, above 0 to 90.</param>
/// <param name="OpeningShare">Diameter of the lens's opening over its distance from what is sharp.</param>
/// <param name="Margin">Free share of the frame at each side.</param>
internal sealed record View(double AzimuthDeg, double ElevationDeg, double OpeningShare, double Margin)
{
    /// <summary>Unit direction in which the camera looks.</summary>
    public Vec3 Forward
    {
        get
        {
            double azimuth = double.DegreesToRadians(AzimuthDeg), elevation = double.DegreesToRadians(ElevationDeg);
            return new Vec3(-Math.Sin(azimuth) * Math.Cos(elevation), Math.Cos(azimuth) * Math.Cos(elevation), -Math.Sin(elevation));
        }
    }

    /// <summary>The view of a scene by rule.</summary>
    public static View Of(SceneKind scene) => scene switch
    {
        // Chosen by eye on rounds of 1.5 to 5 mm. An opening of 0.02 is that of a portrait lens stopped down to 11 at arm's length.
        SceneKind.Draped => new View(-62, 25, 0.03, 0.06),
        SceneKind.Closed => new View(-24, 24, 0.026, 0.09),
        SceneKind.Clasp => new View(-6, 34, 0.024, 0.05),
        SceneKind.Link => new View(-32, 34, 0.02, 0.14),
        _ => new View(66, 24, 0.03, 0.05),
    };
}
