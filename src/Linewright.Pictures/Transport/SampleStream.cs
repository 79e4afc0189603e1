namespace Linewright.Pictures.Transport;

/// <summary>The numbers that decide one sample, in the order in which they are asked for.</summary>
/// <remarks>
/// The first 16 come from Sobol's sequence with Owen's scrambling, anew for each pixel and dimension: any power of two of
/// a pixel's samples is spread evenly. Later ones are plain pseudo-random. Sources: Sobol (1967); Owen (1995); scrambling by
/// a hash: Laine and Karras (2011), Burley (2020), JCGT 9(4); direction numbers: Joe and Kuo (2008); the plain ones: O'Neill
/// (2014), PCG.
/// </remarks>
internal struct SampleStream
{
    /// <summary>How many numbers are spread evenly.</summary>
    public const int Even = 16;

    private readonly uint key;
    private readonly uint index;
    private uint random;
    private int dimension;

    public SampleStream(uint key, uint index)
    {
        this.key = key;
        this.index = index;
        random = Scalar.Hash(key ^ Scalar.Hash(index * 0x9E3779B9u + 77u));
        dimension = 0;
    }

    /// <summary>From 0 to just under 1.</summary>
    public float Next<TWorld>(ref TWorld world)
        where TWorld : struct, IWorld
    {
        if (dimension >= Even)
        {
            random = random * 747796405u + 2891336453u;
            var word = ((random >> (int)((random >> 28) + 4)) ^ random) * 277803737u;
            return Scalar.Unit((word >> 22) ^ word);
        }

        // The direction numbers are kept with their bits reversed, which is what the scrambling wants.
        var bits = 0u;
        var at = dimension * 32;
        for (var rest = index; rest != 0; rest >>= 1, at++)
        {
            if ((rest & 1) != 0)
            {
                bits ^= world.SobolNumber(at);
            }
        }

        bits = Scramble(bits, Scalar.Hash(key + (uint)dimension * 0x632BE5ABu));
        dimension++;
        return Scalar.Unit(bits);
    }

    /// <summary>Owen's scrambling of a number whose bits are reversed; turns it round.</summary>
    internal static uint Scramble(uint x, uint seed)
    {
        x += seed;
        x ^= x * 0x6c50b47cu;
        x ^= x * 0xb82f1e52u;
        x ^= x * 0xc7afe638u;
        x ^= x * 0x8d22f6e6u;
        return Reverse(x);
    }

    internal static uint Reverse(uint x)
    {
        x = ((x >> 1) & 0x55555555u) | ((x & 0x55555555u) << 1);
        x = ((x >> 2) & 0x33333333u) | ((x & 0x33333333u) << 2);
        x = ((x >> 4) & 0x0F0F0F0Fu) | ((x & 0x0F0F0F0Fu) << 4);
        x = ((x >> 8) & 0x00FF00FFu) | ((x & 0x00FF00FFu) << 8);
        return (x >> 16) | (x << 16);
    }
}
