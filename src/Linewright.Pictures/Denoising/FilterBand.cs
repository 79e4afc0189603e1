namespace Linewright.Pictures.Denoising;

/// <summary>Some rows of a picture and what lies round them, one plane a quantity, for the vector unit.</summary>
internal sealed class FilterBand
{
    /// <summary>Pixels on every side that are read but not written: the search, the patch, the neighbours that tell a pixel's variance.</summary>
    public const int Margin = JointFilter.Radius + 2;

    /// <summary>
    /// Weight of the halves' difference as a measure of noise, on the grey axis and on the two of colour, beside the samples' spread of luminance.
    /// Measured: least error on ten diamonds against 4,096 samples; the samples' own spread on each axis did worse.
    /// </summary>
    private const float GreyShare = 0.7f;

    private const float ColourShare = 0.3f;

    /// <summary>
    /// The most that the one pixel that is least alike may count against a patch of matte ground, in variances: light changes slowly there, so what stands out
    /// alone is one lucky sample, and must not keep the eight about it from their kin. Measured: held for each pixel of a patch, not for one, shadows run.
    /// </summary>
    private const float Spark = 2;

    /// <summary>
    /// Share of a turn of the mean normal that counts where edges in focus lie close: it tells what share of a pixel shows which side. Measured: least error on
    /// closed lines and an open clasp; with none of it or all of it the error there is a tenth to a third larger.
    /// </summary>
    private const float EdgeTurn = 0.3f;

    /// <summary>What compares with nothing: no pixel, or none at this size.</summary>
    private const float Nowhere = 1000;

    /// <summary>Share of a difference that counts where the lens blurs: what is seen there is smooth by itself. Chosen by eye.</summary>
    private const float BlurEase = 0.4f;

    private const float OverRoot2 = 0.70710678f;
    private const float OverRoot3 = 0.57735027f;
    private const float OverRoot6 = 0.40824829f;

    public FilterBand(int width, int rows)
    {
        // Room for a whole vector past the last pixel.
        Stride = (width + 2 * Margin + 15) / 8 * 8;
        Rows = rows + 2 * Margin;
        First = Planes(3);
        Second = Planes(3);
        Normal = Planes(3);
        Albedo = Planes(3);
        Alpha = new float[Stride * Rows];
        Side = new float[Stride * Rows];
        Most = new float[Stride * Rows];
        Ease = new float[Stride * Rows];
        Variance = Planes(3);
        Luminance = new float[Stride * Rows];
        Key = new int[Stride * Rows];
    }

    public int Stride { get; }

    public int Rows { get; }

    /// <summary>Grey, warm and lush of the first half, over the albedo.</summary>
    public float[][] First { get; }

    /// <summary>The same of the other half.</summary>
    public float[][] Second { get; }

    public float[][] Normal { get; }

    /// <summary>What the light was divided by, and is multiplied with in the end.</summary>
    public float[][] Albedo { get; }

    public float[] Alpha { get; }

    /// <summary>Whose light compares: 1 where the lens runs surfaces together, -1 where it does not, 0 on matte ground, which compares with both.</summary>
    public float[] Side { get; }

    /// <summary>The most that one pixel of a patch may count, variances.</summary>
    public float[] Most { get; }

    /// <summary>Share of a difference that counts.</summary>
    public float[] Ease { get; }

    /// <summary>Variance of a half on each axis.</summary>
    public float[][] Variance { get; }

    /// <summary>Variance of a half's luminance.</summary>
    private float[] Luminance { get; }

    public int[] Key { get; }

    /// <summary>Fills all rows from a picture, the first at <paramref name="top"/> less the margin.</summary>
    public void Fill(int top, FilterLevel level)
    {
        Array.Fill(Key, KinMap.Outside);
        for (var row = 0; row < Rows; row++)
        {
            var y = top - Margin + row;
            for (var column = 0; column < Stride; column++)
            {
                var x = column - Margin;
                var at = row * Stride + column;
                if (x < 0 || x >= level.Width || y < 0 || y >= level.Height)
                {
                    First[0][at] = First[1][at] = First[2][at] = Second[0][at] = Second[1][at] = Second[2][at] = 0;
                    Luminance[at] = Alpha[at] = 0;
                    Side[at] = Nowhere;
                    continue;
                }

                Put(at, level.Pixel(x, y), level.Keys[y * level.Width + x], level);
            }
        }

        for (var at = 0; at < Key.Length; at++)
        {
            (First[0][at], First[1][at], First[2][at]) = Axes(First[0][at], First[1][at], First[2][at]);
            (Second[0][at], Second[1][at], Second[2][at]) = Axes(Second[0][at], Second[1][at], Second[2][at]);
        }

        for (var row = 1; row < Rows - 1; row++)
        {
            for (var at = row * Stride + 1; at < (row + 1) * Stride - 1; at++)
            {
                Spread(at);
            }
        }
    }

    /// <summary>Noise on each axis: how far the halves of a pixel and of its kin round it lie apart. A single wavelength's spark is dim but loud in colour.</summary>
    private void Spread(int at)
    {
        float grey = 0, warm = 0, lush = 0;
        var count = 0;
        for (var row = at - Stride; row <= at + Stride; row += Stride)
        {
            for (var k = row - 1; k <= row + 1; k++)
            {
                if (Key[k] == Key[at])
                {
                    float g = First[0][k] - Second[0][k], w = First[1][k] - Second[1][k], l = First[2][k] - Second[2][k];
                    grey += g * g;
                    warm += w * w;
                    lush += l * l;
                    count++;
                }
            }
        }

        // The difference of two halves has twice the variance of one.
        var each = 0.5f / count;
        Variance[0][at] = MathF.Max(Luminance[at], GreyShare * grey * each);
        Variance[1][at] = MathF.Max(Luminance[at], ColourShare * warm * each);
        Variance[2][at] = MathF.Max(Luminance[at], ColourShare * lush * each);
    }

    private void Put(int at, in FilterPixel p, int key, FilterLevel level)
    {
        var isGround = KinMap.IsGround(p);
        var isBlur = key == KinMap.Blurred || (key == KinMap.Smooth && !isGround);

        // What runs together is not divided by albedos that it does not have: by the ground's, so that it compares with it, or by none.
        var (albedo, normal) = !isBlur ? (p.Albedo, p.Normal) : key == KinMap.Smooth ? (level.Kin.Albedo, level.Kin.Normal) : ((1, 1, 1), (p.Normal.X * EdgeTurn, p.Normal.Y * EdgeTurn, p.Normal.Z * EdgeTurn));
        float r = Over(albedo.Red), g = Over(albedo.Green), b = Over(albedo.Blue);
        (Albedo[0][at], Albedo[1][at], Albedo[2][at]) = (1 / r, 1 / g, 1 / b);
        (First[0][at], First[1][at], First[2][at]) = (p.First.Red * r, p.First.Green * g, p.First.Blue * b);
        (Second[0][at], Second[1][at], Second[2][at]) = (p.Second.Red * r, p.Second.Green * g, p.Second.Blue * b);
        Alpha[at] = p.Alpha;
        var mean = (r + g + b) / 3;
        Luminance[at] = p.Variance * mean * mean;
        (Normal[0][at], Normal[1][at], Normal[2][at]) = normal;
        Key[at] = key;
        Side[at] = key == KinMap.Outside ? Nowhere : key != KinMap.Smooth ? -1 : isGround ? 0 : 1;
        Most[at] = isGround ? Spark : float.MaxValue;
        Ease[at] = isBlur ? BlurEase : 1;
    }

    /// <summary>A colour on three axes at right angles: grey, from blue to red, from green to both.</summary>
    private static (float Grey, float Warm, float Lush) Axes(float r, float g, float b)
        => ((r + g + b) * OverRoot3, (r - b) * OverRoot2, (r - 2 * g + b) * OverRoot6);

    /// <summary>Back from the axes.</summary>
    public static (float Red, float Green, float Blue) Colour(float grey, float warm, float lush)
        => (grey * OverRoot3 + warm * OverRoot2 + lush * OverRoot6, grey * OverRoot3 - 2 * lush * OverRoot6, grey * OverRoot3 - warm * OverRoot2 + lush * OverRoot6);

    /// <summary>One over an albedo, held away from zero.</summary>
    private static float Over(float albedo) => 1 / MathF.Max(albedo, 0.02f);

    private float[][] Planes(int count) => [.. Enumerable.Range(0, count).Select(_ => new float[Stride * Rows])];
}
