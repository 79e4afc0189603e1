namespace Linewright.Pictures.Transport;

/// <summary>The few functions that a path needs, in arithmetic alone: the same bits on every machine and device.</summary>
internal static class Scalar
{
    public const float Pi = 3.14159265f;
    public const float OverPi = 0.31830989f;

    /// <summary>Sine and cosine of a share of a full turn, 0 to 1; error below 2e-6.</summary>
    /// <remarks>Taylor's series about the middle of the quarter's half, where it is short. Calculated.</remarks>
    public static void SinCosTurn(float share, out float sin, out float cos)
    {
        var quarters = share * 4;
        var quadrant = (int)quarters;
        var x = (quarters - quadrant - 0.5f) * (Pi / 2);
        var xx = x * x;
        var s = x * (1 - xx * (1f / 6 - xx * (1f / 120 - xx * (1f / 5040))));
        var c = 1 - xx * (1f / 2 - xx * (1f / 24 - xx * (1f / 720 - xx * (1f / 40320))));

        // The angle is x + 45 degrees in the first quarter.
        const float half = 0.70710678f;
        float sq = half * (s + c), cq = half * (c - s);
        quadrant &= 3;
        sin = quadrant == 0 ? sq : quadrant == 1 ? cq : quadrant == 2 ? -sq : -cq;
        cos = quadrant == 0 ? cq : quadrant == 1 ? -sq : quadrant == 2 ? -cq : sq;
    }

    /// <summary>e to a power at or below zero; relative error below 3e-5 down to -20, zero below -60.</summary>
    /// <remarks>The series of x / 64, squared six times. Calculated.</remarks>
    public static float Exp(float x)
    {
        if (x < -60)
        {
            return 0;
        }

        x *= 1f / 64;
        var e = 1 + x * (1 + x * (0.5f + x * (1f / 6 + x * (1f / 24 + x * (1f / 120 + x * (1f / 720))))));
        e *= e;
        e *= e;
        e *= e;
        e *= e;
        e *= e;
        return e * e;
    }

    /// <summary>Shuffles the bits of a number. Source: Wellons (2018), hash prospector, lowbias32.</summary>
    public static uint Hash(uint x)
    {
        x ^= x >> 16;
        x *= 0x7feb352du;
        x ^= x >> 15;
        x *= 0x846ca68bu;
        return x ^ (x >> 16);
    }

    /// <summary>The upper 24 bits as a number from 0 to just under 1.</summary>
    public static float Unit(uint x) => (x >> 8) * (1f / 16777216f);
}
