using Linewright.Pictures.Scenes;
using Linewright.Solids.Space;

namespace Linewright.Staging;

/// <summary>How much light a level white sheet receives, as a multiple of what lights it fully: the mean radiance of the sky over it, weighted by the cosine.</summary>
internal static class GroundIrradiance
{
    private const int Rings = 90, Sectors = 180, Cells = 24;

    /// <summary>At a point that faces up.</summary>
    /// <remarks>What one light hides of another or of the sky is counted with both: an estimate to set an exposure by.</remarks>
    public static double Of(Vec3 at, IEnumerable<AreaLight> lights, Surroundings around)
    {
        ArgumentNullException.ThrowIfNull(lights);
        ArgumentNullException.ThrowIfNull(around);
        return FromSky(around) + lights.Sum(light => FromLight(at, light));
    }

    /// <summary>Malley's rule: directions spread evenly over the disk below the sky are weighted by the cosine.</summary>
    private static double FromSky(Surroundings around)
    {
        var sum = 0.0;
        for (var ring = 0; ring < Rings; ring++)
        {
            var r = Math.Sqrt((ring + 0.5) / Rings);
            var z = Math.Sqrt(1 - r * r);
            for (var sector = 0; sector < Sectors; sector++)
            {
                var turn = (sector + 0.5) / Sectors * 2 * Math.PI;
                var way = new Vec3(r * Math.Cos(turn), r * Math.Sin(turn), z);
                var radiance = around.Horizon + (around.Zenith - around.Horizon) * z;
                foreach (var strip in around.Strips)
                {
                    radiance += strip.Radiance * Cover(strip, way);
                }

                sum += Math.Max(0, radiance);
            }
        }

        return sum / (Rings * Sectors);
    }

    /// <summary>1 within a strip, 0 outside; its soft edges count as sharp half-way.</summary>
    private static double Cover(LightStrip strip, Vec3 way)
    {
        var middle = strip.Towards.Normalised();
        var across = middle.Cross(strip.Along).Normalised();
        var along = across.Cross(middle);
        var ahead = way.Dot(middle);
        if (ahead <= 0)
        {
            return 0;
        }

        var isIn = Math.Abs(Math.Atan2(way.Dot(along), ahead)) < strip.HalfLength
            && Math.Abs(Math.Atan2(way.Dot(across), ahead)) < strip.HalfWidth * (1 - strip.Softness / 2);
        return isIn ? 1 : 0;
    }

    private static double FromLight(Vec3 at, AreaLight light)
    {
        var normal = light.Normal;
        var sum = 0.0;
        for (var i = 0; i < Cells; i++)
        {
            for (var j = 0; j < Cells; j++)
            {
                double u = (2 * i + 1.0) / Cells - 1, v = (2 * j + 1.0) / Cells - 1;
                var to = light.Centre + light.HalfEdgeU * u + light.HalfEdgeV * v - at;
                var distance = to.Length;
                var up = to.Z / distance;
                var facing = -normal.Dot(to) / distance;
                sum += Math.Max(0, up) * Math.Max(0, facing) / (distance * distance);
            }
        }

        return light.Radiance * light.Area * sum / (Cells * Cells * Math.PI);
    }
}
