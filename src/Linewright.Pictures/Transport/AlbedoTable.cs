using Linewright.Pictures.Rays;

namespace Linewright.Pictures.Transport;

/// <summary>How much of its light a surface of tiny mirrors keeps from one bounce, by the direction from which it is seen.</summary>
/// <remarks>
/// The rest was thrown from mirror to mirror. A metal gives it back by the factor 1 + F (1 / E - 1): a perfect mirror then
/// returns exactly everything at any roughness, along its polish lines and across them. Source of the factor: Turquin (2019),
/// Practical multiple scattering compensation for microfacet models. One table a finish, calculated by a fixed lattice of
/// directions, the same on every machine.
/// </remarks>
internal static class AlbedoTable
{
    public const int Angles = 32;
    public const int Turns = 8;
    public const int Size = Angles * Turns;
    private const int Side = 32;

    /// <summary>Of perfect mirrors.</summary>
    public static float[] Mirrors(float along, float across) => Fill(along, across, (_, _) => 1);

    /// <summary>Of a clear coat with index 1.5, the same all round.</summary>
    public static float[] Coat(float rough) => Fill(rough, rough, (wo, h) => Fresnel.Dielectric(Float3.Dot(wo, h), 1 / 1.5f, out _));

    /// <summary>Reads a table between its places.</summary>
    public static float Read<TWorld>(ref TWorld world, int table, Float3 wo)
        where TWorld : struct, IWorld
    {
        float x = MathF.Abs(wo.X), y = MathF.Abs(wo.Y);

        // Finer near grazing, where it bends; the turn about the normal as a share of the quarter, without its angle.
        var a = MathF.Sqrt(MathF.Min(1f, MathF.Max(0f, wo.Z))) * (Angles - 1);
        var t = y / MathF.Max(x + y, 1e-12f) * (Turns - 1);
        int ia = Math.Min((int)a, Angles - 2), it = Math.Min((int)t, Turns - 2);
        float sa = a - ia, st = t - it;
        var at = table + it * Angles + ia;
        float p = world.Albedo(at), q = world.Albedo(at + 1), r = world.Albedo(at + Angles), s = world.Albedo(at + Angles + 1);
        return (p + (q - p) * sa) * (1 - st) + (r + (s - r) * sa) * st;
    }

    private static float[] Fill(float along, float across, Func<Float3, Float3, float> share)
    {
        var table = new float[Size];
        for (var t = 0; t < Turns; t++)
        {
            float y = (float)t / (Turns - 1), x = 1 - y, length = MathF.Sqrt(x * x + y * y);
            for (var a = 0; a < Angles; a++)
            {
                var cosine = MathF.Max(1e-3f, (float)a * a / ((Angles - 1) * (Angles - 1)));
                var sine = MathF.Sqrt(1 - cosine * cosine) / length;
                table[t * Angles + a] = Mean(new Float3(x * sine, y * sine, cosine), along, across, share);
            }
        }

        return table;
    }

    private static float Mean(Float3 wo, float along, float across, Func<Float3, Float3, float> share)
    {
        double sum = 0;
        for (var i = 0; i < Side * Side; i++)
        {
            var h = Microfacet.VisibleNormal(wo, along, across, (i % Side + 0.5f) / Side, (i / Side + 0.5f) / Side);
            var wi = h * (2 * Float3.Dot(wo, h)) - wo;
            sum += wi.Z > 0 ? Microfacet.Weight(wo, wi, along, across) * share(wo, h) : 0;
        }

        return (float)(sum / (Side * Side));
    }
}
