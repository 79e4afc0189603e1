using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>A surface of tiny mirrors whose slopes follow GGX, wider across the polish lines than along them.</summary>
/// <remarks>
/// Directions are in the surface's frame: x along the lines, y across, z out. Sources: distribution and shadowing: Walter et
/// al. (2007), Trowbridge and Reitz (1975), Heitz (2014), JCGT 3(2); sampling of the visible normals: Dupuy and Benyoub
/// (2023), Sampling visible GGX normals with spherical caps.
/// </remarks>
internal static class Microfacet
{
    /// <summary>Density of the mirrors' normals over solid angle, weighted by area.</summary>
    public static float Density(Float3 h, float along, float across)
    {
        float x = h.X / along, y = h.Y / across;
        var s = x * x + y * y + h.Z * h.Z;
        return 1 / (Scalar.Pi * along * across * s * s);
    }

    /// <summary>Smith's auxiliary function of one direction.</summary>
    public static float Lambda(Float3 w, float along, float across)
    {
        float x = w.X * along, y = w.Y * across;
        return 0.5f * (MathF.Sqrt(1 + (x * x + y * y) / MathF.Max(w.Z * w.Z, 1e-12f)) - 1);
    }

    /// <summary>A mirror's normal, chosen as often as its area is seen from <paramref name="wo"/>.</summary>
    public static Float3 VisibleNormal(Float3 wo, float along, float across, float u1, float u2)
    {
        var w = Float3.Normalise(new Float3(wo.X * along, wo.Y * across, wo.Z));
        Scalar.SinCosTurn(u1, out var sin, out var cos);
        var z = (1 - u2) * (1 + w.Z) - w.Z;
        var r = MathF.Sqrt(MathF.Max(0f, 1 - z * z));
        var h = new Float3(r * cos + w.X, r * sin + w.Y, z + w.Z);
        return Float3.Normalise(new Float3(h.X * along, h.Y * across, MathF.Max(1e-9f, h.Z)));
    }

    /// <summary>Density over solid angle with which a mirror of a visible normal sends light to its target.</summary>
    public static float ReflectedDensity(Float3 wo, Float3 h, float along, float across)
        => Density(h, along, across) / (4 * MathF.Max(wo.Z, 1e-6f) * (1 + Lambda(wo, along, across)));

    /// <summary>What a perfectly reflecting surface sends from <paramref name="wi"/> to <paramref name="wo"/>, times the cosine of the way in.</summary>
    public static float Reflected(Float3 wo, Float3 wi, Float3 h, float along, float across)
        => Density(h, along, across)
            / (4 * MathF.Max(wo.Z, 1e-6f) * (1 + Lambda(wo, along, across) + Lambda(wi, along, across)));

    /// <summary>That over its density: the weight of a sampled direction.</summary>
    public static float Weight(Float3 wo, Float3 wi, float along, float across)
    {
        var seen = 1 + Lambda(wo, along, across);
        return seen / (seen + Lambda(wi, along, across));
    }
}
