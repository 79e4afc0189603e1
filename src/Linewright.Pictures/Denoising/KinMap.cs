namespace Linewright.Pictures.Denoising;

/// <summary>Says of every pixel of a picture which others it may be averaged with: pixels with the same key are kin.</summary>
/// <remarks>
/// A pixel that shows one surface is kin of those that show it too. Where surfaces meet within a pixel, only pixels with much the same
/// mixture are. Where the lens spreads a point wider than a pixel there is no edge to keep: all that it runs together is kin, with
/// the rim about it, since how far samples happened to see it reach is chance, and a border drawn by chance is seen as
/// dots. Matte ground belongs to the same kin, so that a blurred body runs out into its ground without a border.
/// </remarks>
internal sealed class KinMap
{
    /// <summary>Key of what lies outside the picture: it matches nothing.</summary>
    public const int Outside = int.MinValue;

    /// <summary>Key of pixels in which everything runs into everything, because parts are smaller than a pixel.</summary>
    public const int Blurred = int.MinValue + 1;

    /// <summary>Key of pixels in which light changes slowly from one to the next: on matte ground, and where the lens spreads it.</summary>
    public const int Smooth = int.MinValue + 2;

    /// <summary>Mixed pixels among the nine about one that make it blurred, and mixed ones beside it: an edge in focus is a line of them and stays below.</summary>
    private const int BlurredFrom = 6;

    /// <summary>Radius of the lens's circle, pixels, from which on what it runs together is smooth: half of it reaches beyond the pixel's own window.</summary>
    private const float Circle = 1;

    /// <summary>The same from which on all is smooth, even within one surface.</summary>
    private const float WideCircle = 3;

    /// <summary>
    /// Width of the rim, pixels. Measured: with 4 instead of 6 metal beside a blurred edge keeps twice the error, since two faces that
    /// look the same way run together unseen; more gains nothing.
    /// </summary>
    private const int Rim = 6;

    /// <summary>Square of the mean normal's length under which a pixel counts as mixed. Calculated: two facets that meet at 16 degrees, half and half.</summary>
    private const float Mixed = 0.98f;

    private KinMap(int[] keys, (float Red, float Green, float Blue) albedo, (float X, float Y, float Z) normal)
        => (Keys, Albedo, Normal) = (keys, albedo, normal);

    /// <summary>One key a pixel, row by row.</summary>
    public int[] Keys { get; }

    /// <summary>Mean albedo of the matte ground, 1 where none is seen: what the light of other smooth pixels is divided by, so that they compare with it.</summary>
    public (float Red, float Green, float Blue) Albedo { get; }

    /// <summary>Its mean normal, 0 where none is seen.</summary>
    public (float X, float Y, float Z) Normal { get; }

    /// <summary>Judges a whole picture.</summary>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <param name="pixel">Reads a pixel; called from several threads.</param>
    /// <param name="loop">Whose threads, how many; stops between rows.</param>
    public static KinMap Of(int width, int height, Func<int, int, FilterPixel> pixel, ParallelOptions loop)
    {
        var keys = new int[width * height];
        bool[] mixed = new bool[keys.Length], wide = new bool[keys.Length];
        var rows = new FilterPixel[height];
        var grounds = new int[height];
        Parallel.For(0, height, loop, y =>
        {
            for (var x = 0; x < width; x++)
            {
                var at = y * width + x;
                var p = pixel(x, y);
                mixed[at] = IsMixed(p);
                wide[at] = p.Blur >= Circle;
                keys[at] = p.Blur >= WideCircle ? Smooth : mixed[at] ? Mixture(p) : p.IsMatte ? Smooth : p.Facet;
                if (IsGround(p))
                {
                    rows[y].Add(p);
                    grounds[y]++;
                }
            }
        });
        Join(keys, mixed, wide, width, height, loop);

        // Row by row in their order, so that the sum does not depend on the threads.
        var ground = default(FilterPixel);
        foreach (var row in rows)
        {
            ground.Add(row);
        }

        ground.Share(Math.Max(1, grounds.Sum()));
        return new KinMap(keys, grounds.Sum() > 0 ? ground.Albedo : (1, 1, 1), ground.Normal);
    }

    /// <summary>Whether a pixel shows matte ground and nothing else.</summary>
    public static bool IsGround(in FilterPixel p) => p.IsMatte && !IsMixed(p);

    /// <summary>Makes kin of what runs together.</summary>
    private static void Join(int[] keys, bool[] mixed, bool[] wide, int width, int height, ParallelOptions loop)
    {
        bool[] core = new bool[keys.Length], spread = new bool[keys.Length];
        var about = Count(mixed, width, height, 1, loop);
        Parallel.For(0, height, loop, y =>
        {
            for (var at = y * width; at < (y + 1) * width; at++)
            {
                core[at] = mixed[at] && about[at] >= BlurredFrom;
                spread[at] = core[at] && wide[at];
            }
        });
        byte[] beside = Count(core, width, height, 1, loop), rim = Count(spread, width, height, Rim, loop);
        Parallel.For(0, height, loop, y =>
        {
            for (var at = y * width; at < (y + 1) * width; at++)
            {
                if (rim[at] > 0)
                {
                    keys[at] = Smooth;
                }
                else if (mixed[at] && beside[at] > 0 && keys[at] != Smooth)
                {
                    keys[at] = Blurred;
                }
            }
        });
    }

    private static bool IsMixed(in FilterPixel p)
    {
        var (x, y, z) = p.Normal;
        var length = x * x + y * y + z * z;
        return length < Mixed && (p.Facet != 0 || length > 0);
    }

    private static int Mixture(in FilterPixel p)
    {
        var (x, y, z) = p.Normal;
        return -1 - (Step(x) + 16 * Step(y) + 256 * Step(z) + 4096 * (p.Facet & 0x3FFFF));
    }

    private static int Step(float v) => Math.Clamp((int)((v + 1) * 7.5f), 0, 15);

    /// <summary>How many pixels of the square about each are so, up to 255: along the rows first, then down them.</summary>
    private static byte[] Count(bool[] are, int width, int height, int reach, ParallelOptions loop)
    {
        byte[] across = new byte[are.Length], all = new byte[are.Length];
        Parallel.For(0, height, loop, y =>
        {
            for (var x = 0; x < width; x++)
            {
                var sum = 0;
                for (var u = Math.Max(0, x - reach); u <= Math.Min(width - 1, x + reach); u++)
                {
                    sum += are[y * width + u] ? 1 : 0;
                }

                across[y * width + x] = (byte)sum;
            }
        });
        Parallel.For(0, height, loop, y =>
        {
            for (var v = Math.Max(0, y - reach); v <= Math.Min(height - 1, y + reach); v++)
            {
                for (var x = 0; x < width; x++)
                {
                    all[y * width + x] = (byte)Math.Min(255, all[y * width + x] + across[v * width + x]);
                }
            }
        });
        return all;
    }
}
