using System.Runtime.CompilerServices;

namespace Linewright.Solids.Meshing;

/// <summary>Edges waiting to be collapsed, cheapest first to within half an octave of cost.</summary>
/// <remarks>Buckets instead of a heap: the order within a bucket matters little, and pushing is free. Last in, first out.</remarks>
internal sealed class CollapseQueue
{
    private const int Buckets = 64;

    // The lowest bucket starts at 2^-50 square mm: a deviation of 0.03 nm.
    private const int LowestExponent = -50;
    private readonly List<Edge>[] buckets = new List<Edge>[Buckets];
    private int lowest = Buckets;

    public CollapseQueue()
    {
        for (var i = 0; i < Buckets; i++)
        {
            buckets[i] = [];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Push(double cost, Edge edge)
    {
        // Exponent and first bit of the mantissa number the half-octaves.
        var halfOctave = (int)(BitConverter.DoubleToInt64Bits(cost) >> 51) - ((1023 + LowestExponent) << 1);
        var bucket = Math.Clamp(halfOctave, 0, Buckets - 1);
        buckets[bucket].Add(edge);
        lowest = Math.Min(lowest, bucket);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool TryPop(out Edge edge)
    {
        while (lowest < Buckets && buckets[lowest].Count == 0)
        {
            lowest++;
        }

        if (lowest == Buckets)
        {
            edge = default;
            return false;
        }

        var list = buckets[lowest];
        edge = list[^1];
        list.RemoveAt(list.Count - 1);
        return true;
    }

    /// <summary>An edge and the versions that its two ends had when it was valued.</summary>
    public readonly record struct Edge(int A, int B, int VersionA, int VersionB);
}
