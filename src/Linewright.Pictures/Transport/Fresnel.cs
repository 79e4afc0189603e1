namespace Linewright.Pictures.Transport;

/// <summary>Light at a smooth border, unpolarised. Source: Fresnel (1823); Born and Wolf, Principles of Optics, sections 1.5 and 14.2.</summary>
internal static class Fresnel
{
    /// <summary>Share thrown back between two clear substances.</summary>
    /// <param name="cosine">Of the angle to the normal where the light comes from, 0 to 1.</param>
    /// <param name="ratio">Index where the light comes from over index where it goes.</param>
    /// <param name="beyond">Cosine on the far side; 0 where all of it is thrown back.</param>
    public static float Dielectric(float cosine, float ratio, out float beyond)
    {
        var sine2 = ratio * ratio * MathF.Max(0f, 1f - cosine * cosine);
        if (sine2 >= 1f)
        {
            beyond = 0;
            return 1f;
        }

        beyond = MathF.Sqrt(1f - sine2);
        float s = (ratio * cosine - beyond) / (ratio * cosine + beyond), p = (cosine - ratio * beyond) / (cosine + ratio * beyond);
        return 0.5f * (s * s + p * p);
    }

    /// <summary>Share thrown back by a metal n + ik in air.</summary>
    public static float Conductor(float cosine, float n, float k)
    {
        float c2 = cosine * cosine, s2 = 1 - c2;
        var t0 = n * n - k * k - s2;
        var a2b2 = MathF.Sqrt(MathF.Max(0f, t0 * t0 + 4 * n * n * k * k));
        var t1 = a2b2 + c2;
        var a = MathF.Sqrt(MathF.Max(0f, 0.5f * (a2b2 + t0)));
        var t2 = 2 * cosine * a;
        var s = (t1 - t2) / (t1 + t2);
        float t3 = c2 * a2b2 + s2 * s2, t4 = t2 * s2;
        var p = s * (t3 - t4) / MathF.Max(t3 + t4, 1e-20f);
        return 0.5f * (p + s);
    }
}
