using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Linewright.Pictures.Rays;

/// <summary>A flat array outside the managed heap that starts on a cache line; freed with its last reference.</summary>
/// <remarks>Not cleared: pages that nobody writes cost no memory. Whoever uses the pointer keeps the block alive.</remarks>
internal sealed unsafe class AlignedBlock<T> : SafeHandleZeroOrMinusOneIsInvalid
    where T : unmanaged
{
    private const int Line = 64;

    public AlignedBlock(long count)
        : base(true)
    {
        SetHandle((nint)NativeMemory.AlignedAlloc((nuint)(Math.Max(count, 1) * sizeof(T)), Line));
        Count = count;
    }

    public AlignedBlock(ReadOnlySpan<T> values)
        : this(values.Length)
        => values.CopyTo(Span);

    public T* Pointer => (T*)handle;

    public long Count { get; }

    public Span<T> Span => new(Pointer, checked((int)Count));

    protected override bool ReleaseHandle()
    {
        NativeMemory.AlignedFree((void*)handle);
        return true;
    }
}
