namespace Linewright.Solids.Lanes;

/// <summary>Scratch memory for one thread's batches: taken like a stack, given back to a mark.</summary>
public sealed class Arena
{
    // 2 MiB holds the batches of a block of 9^3 samples through any part that we build; more is taken from the heap.
    private const int Capacity = 1 << 19;
    private readonly float[] store = GC.AllocateUninitializedArray<float>(Capacity, pinned: true);
    private int top;

    /// <summary>Where the stack stands; hand it to <see cref="Release"/>.</summary>
    public int Mark => top;

    /// <summary>Takes room for a number of floats; the content is undefined.</summary>
    public Span<float> Take(int count)
    {
        var rounded = (count + 15) & ~15;
        if (top + rounded > Capacity)
        {
            return new float[count];
        }

        var taken = store.AsSpan(top, count);
        top += rounded;
        return taken;
    }

    /// <summary>Gives back everything taken since the mark.</summary>
    public void Release(int mark) => top = mark;
}
