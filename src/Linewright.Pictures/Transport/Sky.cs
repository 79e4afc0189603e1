using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>The surroundings: how bright a direction is, and how often it is chosen.</summary>
/// <remarks>
/// Directions are folded onto a square by the octahedron: no angle functions, and a cell's share of the sphere is known in
/// closed form (the cube of the distance to the octahedron's face). Calculated; folding: Praun and Hoppe (2003).
/// </remarks>
internal static class Sky
{
    /// <summary>Luminance, as a multiple of white.</summary>
    public static float Radiance<TWorld>(ref TWorld world, in SkyRecord sky, Float3 d)
        where TWorld : struct, IWorld
    {
        var z = MathF.Abs(d.Z);
        var rise = z * z * (3 - 2 * z);
        var sum = sky.Horizon + ((d.Z >= 0 ? sky.Zenith : sky.Nadir) - sky.Horizon) * rise;
        for (var i = 0; i < sky.StripCount; i++)
        {
            ref readonly var strip = ref world.Strip(i);
            var ahead = Float3.Dot(d, strip.Towards);
            if (ahead <= 1e-4f)
            {
                continue;
            }

            var along = Edge(MathF.Abs(Float3.Dot(d, strip.Along) / ahead), strip.HalfLength, strip.Fade);
            var across = Edge(MathF.Abs(Float3.Dot(d, strip.Across) / ahead), strip.HalfWidth, strip.Fade);
            sum += strip.Radiance * along * across;
        }

        return MathF.Max(0f, sum);
    }

    /// <summary>The point of the square, -1 to 1 both ways, that stands for a direction.</summary>
    public static void Fold(Float3 d, out float u, out float v)
    {
        var over = 1 / (MathF.Abs(d.X) + MathF.Abs(d.Y) + MathF.Abs(d.Z));
        u = d.X * over;
        v = d.Y * over;
        if (d.Z < 0)
        {
            var w = u;
            u = (1 - MathF.Abs(v)) * (u >= 0 ? 1 : -1);
            v = (1 - MathF.Abs(w)) * (v >= 0 ? 1 : -1);
        }
    }

    /// <summary>The direction that a point of the square stands for, and the ratio of densities: over the sphere to over the square.</summary>
    public static Float3 Unfold(float u, float v, out float stretch)
    {
        var z = 1 - MathF.Abs(u) - MathF.Abs(v);
        if (z < 0)
        {
            var w = u;
            u = (1 - MathF.Abs(v)) * (u >= 0 ? 1 : -1);
            v = (1 - MathF.Abs(w)) * (v >= 0 ? 1 : -1);
        }

        var length = MathF.Sqrt(u * u + v * v + z * z);
        stretch = length * length * length;
        return new Float3(u / length, v / length, z / length);
    }

    /// <summary>Chooses a direction, the brighter the oftener.</summary>
    public static Float3 Choose<TWorld>(ref TWorld world, float u1, float u2, out float density)
        where TWorld : struct, IWorld
    {
        const int count = SkyRecord.Side * SkyRecord.Side;
        var place = u1 * count;
        var index = Math.Min((int)place, count - 1);
        var cell = world.Cell(index);
        var rest = place - index;

        // What is left of the first number decides between the two cells, and is then stretched again.
        if (rest < cell.Stay)
        {
            rest /= cell.Stay;
        }
        else
        {
            rest = (rest - cell.Stay) / MathF.Max(1 - cell.Stay, 1e-7f);
            index = cell.Other;
            cell = world.Cell(index);
        }

        var u = (index % SkyRecord.Side + MathF.Min(rest, 0.999999f)) * (2f / SkyRecord.Side) - 1;
        var v = (index / SkyRecord.Side + u2) * (2f / SkyRecord.Side) - 1;
        var d = Unfold(u, v, out var stretch);
        density = cell.Density * stretch;
        return d;
    }

    /// <summary>Density with which <see cref="Choose"/> comes upon a direction.</summary>
    public static float Density<TWorld>(ref TWorld world, Float3 d)
        where TWorld : struct, IWorld
    {
        Fold(d, out var u, out var v);
        var x = Math.Min((int)((u + 1) * (SkyRecord.Side / 2f)), SkyRecord.Side - 1);
        var y = Math.Min((int)((v + 1) * (SkyRecord.Side / 2f)), SkyRecord.Side - 1);
        var one = MathF.Abs(d.X) + MathF.Abs(d.Y) + MathF.Abs(d.Z);
        return world.Cell(y * SkyRecord.Side + x).Density / (one * one * one);
    }

    private static float Edge(float distance, float half, float fade)
    {
        var t = (half - distance) / MathF.Max(fade, 1e-6f) + 0.5f;
        t = MathF.Min(1f, MathF.Max(0f, t));
        return t * t * (3 - 2 * t);
    }
}
