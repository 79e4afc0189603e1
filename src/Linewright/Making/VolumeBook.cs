using System.Collections.Concurrent;
using Linewright.Parts;
using Linewright.Stones;

namespace Linewright.Making;

/// <summary>Remembers solids that were measured, so that a grid of alternatives measures none twice.</summary>
/// <remarks>
/// Two parts are the same solid where everything that shapes them is equal to the last bit: the forms of link and clasp, the
/// stone's proportions, and every number of the spec but the two of the metal's strength, which act through the clasp's form alone.
/// An alloy is no part of it: two golds that lead to the same clasp share their solids. Safe from several threads; a solid
/// that two ask for at once is measured once.
/// </remarks>
public sealed class VolumeBook
{
    private readonly ConcurrentDictionary<Key, Lazy<double>> volumes = new();
    private int asked;

    /// <summary>How many solids were asked for.</summary>
    public int Asked => asked;

    /// <summary>How many of them had to be measured.</summary>
    public int Measured => volumes.Count;

    /// <summary>The volume of a part in a state: as remembered, or measured and remembered, mm3.</summary>
    internal double Find(Piece piece, Part part, PartState state, Func<double> measure)
    {
        Interlocked.Increment(ref asked);
        return volumes.GetOrAdd(Key.Of(piece, part, state), _ => new Lazy<double>(measure)).Value;
    }

    // A link does not see the clasp; a pin sees neither the clasp nor the pitch, but keeping it with the link is simpler.
    private sealed record Key(PartRole Role, PartState State, LinkForm Link, ClaspForm? Clasp, BrilliantProportions Proportions, LineSpec Spec)
    {
        public static Key Of(Piece piece, Part part, PartState state) => new(
            part.Role,
            state,
            piece.Link,
            part.Role is PartRole.Link or PartRole.Pin ? null : piece.Clasp,
            piece.Stone.Proportions,
            piece.Design.Spec! with { Stone = NoStone, ModulusMPa = 0, TongueStrainLimit = 0 });
    }

    // The body is cut anew for every design; the diameter stands in the link's form, the proportions in the key.
    private static readonly Stone NoStone = null!;
}
