using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>How the ground scatters: evenly, under a clear coat where it is honed.</summary>
/// <remarks>
/// Coat and body share the light so that nothing is lost: what the coat lets in at one angle and out at another,
/// (1 - E(in)) (1 - E(out)) / (1 - mean E), goes through the body. A white body under any coat returns exactly everything.
/// Source: Kelemen and Szirmay-Kalos (2001), A microfacet based coupled specular-matte BRDF model.
/// </remarks>
internal struct GroundSurface
{
    public float CoatRough;
    public float CoatMean;
    public int CoatAlbedo;
    public float CoatOut;
    public float CoatShare;

    /// <summary>The body's scattering times the cosine of the way in, for albedo 1; the coat's; the density of both together.</summary>
    public readonly float Evaluate<TWorld>(ref TWorld world, Float3 wo, Float3 wi, out float coat, out float density)
        where TWorld : struct, IWorld
    {
        coat = 0;
        density = wi.Z * Scalar.OverPi;
        if (CoatRough <= 0)
        {
            return wi.Z * Scalar.OverPi;
        }

        var h = Float3.Normalise(wo + wi);
        coat = Microfacet.Reflected(wo, wi, h, CoatRough, CoatRough) * Fresnel.Dielectric(Float3.Dot(wo, h), 1 / 1.5f, out _);
        density = density * (1 - CoatShare) + CoatShare * Microfacet.ReflectedDensity(wo, h, CoatRough, CoatRough);
        var through = (1 - CoatOut) * (1 - AlbedoTable.Read(ref world, CoatAlbedo, wi)) / (1 - CoatMean);
        return wi.Z * Scalar.OverPi * through;
    }

    /// <summary>A way in, for a way out.</summary>
    public readonly Float3 Choose(Float3 wo, float pick, float u1, float u2)
    {
        if (pick < CoatShare)
        {
            var h = Microfacet.VisibleNormal(wo, CoatRough, CoatRough, u1, u2);
            return h * (2 * Float3.Dot(wo, h)) - wo;
        }

        Scalar.SinCosTurn(u1, out var sin, out var cos);
        var r = MathF.Sqrt(u2);
        return new Float3(r * cos, r * sin, MathF.Sqrt(MathF.Max(0f, 1 - u2)));
    }
}
