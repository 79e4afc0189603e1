using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>How much of its light a surface of tiny mirrors keeps from one bounce, by angle and roughness.</summary>
/// <remarks>
/// The rest was thrown from mirror to mirror. A metal gives it back by the factor 1 + F (1 / E - 1): a perfect mirror then
/// returns exactly everything at any roughness. Source of the factor: Turquin (2019), Practical multiple scattering
/// compensation for microfacet models. Calculated here by a fixed lattice of directions, the same on every machine.
/// </remarks>
internal static class AlbedoTable
{
    public const int Angles = 32;
    public const int Roughnesses = 32;
    private const int Side = 32;

    /// <summary>Of perfect mirrors; row by row of roughness, each from grazing to straight.</summary>
    public static float[] Mirrors { get; } = Fill((wo, h, wi, rough) => wi.Z > 0 ? Microfacet.Weight(wo, wi, rough, rough) : 0);

    /// <summary>Of a clear coat with index 1.5.</summary>
    public static float[] Coat { get; } = Fill((wo, h, wi, rough) => wi.Z > 0
        ? Microfacet.Weight(wo, wi, rough, rough) * Fresnel.Dielectric(Float3.Dot(wo, h), 1 / 1.5f, out _) : 0);

    /// <summary>Place of a cosine along a row, 0 to Angles - 1. Finer near grazing, where it bends.</summary>
    public static float AnglePlace(float cosine) => MathF.Sqrt(cosine) * (Angles - 1);

    /// <summary>Place of a roughness down the rows.</summary>
    public static float RoughnessPlace(float rough) => MathF.Sqrt(rough) * (Roughnesses - 1);

    private static float[] Fill(Func<Float3, Float3, Float3, float, float> value)
    {
        var table = new float[Angles * Roughnesses];
        for (var r = 0; r < Roughnesses; r++)
        {
            var rough = MathF.Max(1e-3f, (float)r * r / ((Roughnesses - 1) * (Roughnesses - 1)));
            for (var a = 0; a < Angles; a++)
            {
                var cosine = MathF.Max(1e-3f, (float)a * a / ((Angles - 1) * (Angles - 1)));
                var wo = new Float3(MathF.Sqrt(1 - cosine * cosine), 0, cosine);
                double sum = 0;
                for (var i = 0; i < Side; i++)
                {
                    for (var j = 0; j < Side; j++)
                    {
                        var h = Microfacet.VisibleNormal(wo, rough, rough, (i + 0.5f) / Side, (j + 0.5f) / Side);
                        var wi = h * (2 * Float3.Dot(wo, h)) - wo;
                        sum += value(wo, h, wi, rough);
                    }
                }

                table[r * Angles + a] = (float)(sum / (Side * Side));
            }
        }

        return table;
    }
}
