using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>Lamps met by a ray, lights aimed at, and how likely each way was.</summary>
/// <remarks>
/// A light can be found by aiming and by chance; both count, weighted by their densities so that the sum is right and
/// the better way dominates. Source: Veach and Guibas (1995), Optimally combining sampling techniques: balance heuristic.
/// Aimed rays take stones for opaque: light through a stone is found by chance alone, with its full weight.
/// </remarks>
internal static class Lamps
{
    /// <summary>The first lamp on a ray that shines towards it, -1 for none; shortens <paramref name="far"/>.</summary>
    public static int Meet<TWorld>(ref TWorld world, in SceneRecord scene, Float3 o, Float3 d, ref float far)
        where TWorld : struct, IWorld
    {
        var met = -1;
        for (var i = 0; i < scene.LampCount; i++)
        {
            ref readonly var lamp = ref world.Lamp(i);
            var slope = Float3.Dot(d, lamp.Normal);
            if (slope >= -1e-7f)
            {
                continue;
            }

            var t = Float3.Dot(lamp.Corner - o, lamp.Normal) / slope;
            if (t <= 1e-4f || t >= far)
            {
                continue;
            }

            var p = o + d * t - lamp.Corner;
            float u = Float3.Dot(p, lamp.EdgeU) * lamp.OverU, v = Float3.Dot(p, lamp.EdgeV) * lamp.OverV;
            if (u >= 0 && u <= 1 && v >= 0 && v <= 1)
            {
                far = t;
                met = i;
            }
        }

        return met;
    }

    /// <summary>Weight of light that was aimed at, over the density of aiming.</summary>
    public static float Aimed(in SceneRecord scene, float aimed, float chance)
        => scene.Ways == 0 ? 1 / (aimed + chance) : scene.Ways == 1 ? 1 / aimed : 0;

    /// <summary>Weight of light that was found by chance; all of it where nobody could have aimed.</summary>
    public static float Found(in SceneRecord scene, float aimed, float chance)
        => chance <= 0 || scene.Ways == 2 ? 1 : scene.Ways == 1 ? 0 : chance / (aimed + chance);

    /// <summary>Density with which aiming comes upon a point of a lamp.</summary>
    public static float Density(in LampRecord lamp, Float3 d, float distance)
        => lamp.Chance * distance * distance / (MathF.Max(-Float3.Dot(d, lamp.Normal), 1e-6f) * lamp.Area);

    /// <summary>Aims at a light.</summary>
    /// <returns>False where nothing comes of it.</returns>
    public static bool Aim<TWorld>(
        ref TWorld world, in SceneRecord scene, Float3 p, int bin, float pick, float u1, float u2,
        out Float3 direction, out float distance, out float density, out Four light)
        where TWorld : struct, IWorld
    {
        var sum = scene.Sky.Chance;
        direction = default;
        distance = Far;
        density = 0;
        light = default;
        if (pick < sum)
        {
            direction = Sky.Choose(ref world, u1, u2, out density);
            density *= scene.Sky.Chance;
            light = Curves.Read(ref world, scene.Sky.Column, bin) * Sky.Radiance(ref world, scene.Sky, direction);
            return density > 0;
        }

        if (scene.LampCount == 0)
        {
            return false;
        }

        var chosen = scene.LampCount - 1;
        for (var i = 0; i < scene.LampCount; i++)
        {
            sum += world.Lamp(i).Chance;
            if (pick < sum)
            {
                chosen = i;
                break;
            }
        }

        ref readonly var lamp = ref world.Lamp(chosen);
        var to = lamp.Corner + lamp.EdgeU * u1 + lamp.EdgeV * u2 - p;
        distance = MathF.Sqrt(Float3.Dot(to, to));
        direction = to * (1 / distance);
        if (Float3.Dot(direction, lamp.Normal) >= 0)
        {
            return false;
        }

        density = Density(lamp, direction, distance);
        light = Curves.Read(ref world, lamp.Column, bin);
        return true;
    }

    /// <summary>Whether an aimed ray is cut off: by the ground, a nearer lamp, metal or a stone.</summary>
    public static bool IsCutOff<TWorld>(ref TWorld world, in SceneRecord scene, Float3 p, Float3 d, float distance)
        where TWorld : struct, IWorld
    {
        var far = distance * 0.9999f;
        if (scene.Ground.Kind >= 0 && d.Z < 0)
        {
            var t = (scene.Ground.Height - p.Z) / d.Z;
            if (t >= 0 && t < far)
            {
                return true;
            }
        }

        var before = far;
        return Meet(ref world, scene, p, d, ref before) >= 0 || world.IsBlocked(p, d, far);
    }

    internal const float Far = 1e30f;
}
