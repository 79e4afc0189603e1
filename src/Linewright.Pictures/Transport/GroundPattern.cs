namespace Linewright.Pictures.Transport;

/// <summary>Tone and slope of a ground at a point, by rule: smooth noise on a lattice, threads, grains.</summary>
/// <remarks>Assumed throughout: strengths chosen by eye at the distance from which jewellery is looked at.</remarks>
internal static class GroundPattern
{
    public const int Paper = 0;
    public const int Stone = 1;
    public const int Cloth = 2;
    public const int Clay = 3;
    public const int Plain = 4;

    /// <summary>Reads the pattern.</summary>
    /// <param name="kind">One of the constants.</param>
    /// <param name="x">mm over the grain.</param>
    /// <param name="y">mm over the grain.</param>
    /// <param name="tone">Factor on the albedo.</param>
    /// <param name="slopeX">Rise along x.</param>
    /// <param name="slopeY">Rise along y.</param>
    public static void At(int kind, float x, float y, out float tone, out float slopeX, out float slopeY)
    {
        tone = 1;
        slopeX = 0;
        slopeY = 0;
        if (kind == Paper)
        {
            var fine = Noise(x, y, 11u, out var fx, out var fy);
            var coarse = Noise(x * 0.23f, y * 0.23f, 12u, out var cx, out var cy);
            tone = 1 + 0.02f * fine + 0.015f * coarse;
            slopeX = 0.055f * fx + 0.03f * cx;
            slopeY = 0.055f * fy + 0.03f * cy;
        }
        else if (kind == Stone)
        {
            var fine = Noise(x * 2.3f, y * 2.3f, 21u, out _, out _);
            var middle = Noise(x * 0.7f, y * 0.7f, 22u, out _, out _);
            var cloud = Noise(x * 0.08f, y * 0.08f, 23u, out _, out _);
            tone = MathF.Max(0.3f, 1 + 0.22f * fine + 0.18f * middle + 0.2f * cloud);
        }
        else if (kind == Cloth)
        {
            Weave(x, y, out tone, out slopeX, out slopeY);
        }
        else if (kind == Clay)
        {
            var coarse = Noise(x * 0.35f, y * 0.35f, 31u, out var cx, out var cy);
            var middle = Noise(x, y, 32u, out var mx, out var my);
            var fine = Noise(x * 6, y * 6, 33u, out var fx, out var fy);
            tone = MathF.Max(0.3f, 1 + 0.1f * coarse + 0.06f * middle + 0.05f * fine);
            slopeX = 0.05f * cx + 0.04f * mx + 0.06f * fx;
            slopeY = 0.05f * cy + 0.04f * my + 0.06f * fy;
        }
    }

    /// <summary>Smooth noise between about -1 and 1, with its slopes. Quintic between lattice points, so that slopes are smooth too.</summary>
    public static float Noise(float x, float y, uint seed, out float dx, out float dy)
    {
        float fx = MathF.Floor(x), fy = MathF.Floor(y);
        int ix = (int)fx, iy = (int)fy;
        float tx = x - fx, ty = y - fy;
        uint low = Row(iy, seed), high = Row(iy + 1, seed);
        float a = Lattice(ix, low), b = Lattice(ix + 1, low), c = Lattice(ix, high), d = Lattice(ix + 1, high);
        float sx = tx * tx * tx * (tx * (tx * 6 - 15) + 10), sy = ty * ty * ty * (ty * (ty * 6 - 15) + 10);
        float gx = 30 * tx * tx * (tx * (tx - 2) + 1), gy = 30 * ty * ty * (ty * (ty - 2) + 1);
        float k = a - b - c + d;
        dx = gx * (b - a + k * sy);
        dy = gy * (c - a + k * sx);
        return a + (b - a) * sx + (c - a) * sy + k * sx * sy;
    }

    private static uint Row(int y, uint seed) => Scalar.Hash((uint)y * 0x85EBCA6Bu ^ seed);

    private static float Lattice(int x, uint row) => Scalar.Unit(Scalar.Hash((uint)x * 0x9E3779B9u ^ row)) * 2 - 1;

    /// <summary>Plain weave: at every crossing one thread lies over the other, in turn.</summary>
    private static void Weave(float x, float y, out float tone, out float slopeX, out float slopeY)
    {
        // Threads waver a little.
        var bend = 0.12f;
        var u = x + bend * Noise(x * 0.31f, y * 0.17f, 41u, out _, out _);
        var v = y + bend * Noise(x * 0.17f, y * 0.31f, 42u, out _, out _);
        float fu = MathF.Floor(u), fv = MathF.Floor(v);
        float s = (u - fu) * 2 - 1, t = (v - fv) * 2 - 1;
        var over = (((int)fu + (int)fv) & 1) == 0;

        // Across its thread the surface is a rounded ridge; along it, it sinks towards the next crossing.
        float across = over ? t : s, along = over ? s : t;
        float slopeAcross = -0.75f * across, slopeAlong = -0.35f * along;
        slopeX = over ? slopeAlong : slopeAcross;
        slopeY = over ? slopeAcross : slopeAlong;
        var thread = Lattice(over ? 7 : (int)fu, Row(over ? (int)fv : 9, 43u));
        var fibre = Noise(over ? u * 2 : u * 9, over ? v * 9 : v * 2, 44u, out _, out _);
        tone = (1 - 0.45f * across * across * across * across) * (1 - 0.25f * along * along) * (1 + 0.1f * thread + 0.12f * fibre);
    }
}
