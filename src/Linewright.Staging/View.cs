using Linewright.Pictures.Images;
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

    /// <summary>How far the azimuth may be moved either way to make the picture larger, degrees.</summary>
    public double SwayDeg { get; init; }

    /// <summary>The view of a scene by rule.</summary>
    public static View Of(SceneKind scene) => scene switch
    {
        // Chosen by eye on rounds of 1.5 to 5 mm. An opening of 0.02 is that of a portrait lens stopped down to 11 at arm's length.
        SceneKind.Draped => new View(-50, 23, 0.012, 0.06) { SwayDeg = 28 },
        SceneKind.Closed => new View(-24, 24, 0.016, 0.09),
        SceneKind.Clasp => new View(-6, 34, 0.022, 0.05),
        SceneKind.Link => new View(-32, 34, 0.02, 0.14),
        _ => new View(62, 23, 0.012, 0.05) { SwayDeg = 16 },
    };

    /// <summary>The azimuth within the sway from which points come nearest.</summary>
    public View Best(IReadOnlyCollection<Vec3> points, PictureSize size)
    {
        const double stepDeg = 4;
        var best = this;
        var nearest = double.PositiveInfinity;
        for (var sway = -SwayDeg; sway <= SwayDeg; sway += stepDeg)
        {
            var view = this with { AzimuthDeg = AzimuthDeg + sway };
            var middle = points.Aggregate(Vec3.Zero, (sum, point) => sum + point) / points.Count;
            var away = (middle - Framing.Eye(points, view, size)).Dot(view.Forward);
            (best, nearest) = away < nearest ? (view, away) : (best, nearest);
        }

        return best;
    }
}
