using Linewright.Solids.Lanes;

namespace Linewright.Solids.Measures;

/// <summary>The calling thread's scratch memory for batches: an arena is too large to make for every measure.</summary>
internal static class Scratch
{
    [ThreadStatic]
    private static Arena? arena;

    /// <summary>This thread's arena; release what was taken before returning.</summary>
    public static Arena Arena => arena ??= new Arena();
}
