using System.Collections.Concurrent;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Stones;

namespace Linewright.Casting;

/// <summary>Remembers solids that were measured and sprued, so that a grid of alternatives does neither twice.</summary>
/// <remarks>
/// Two parts are the same solid where everything that shapes them is equal to the last bit: the forms of link and clasp, the
/// stone's proportions, and every number of the spec but those of the metal's strength, which act through the forms of hinge and clasp alone.
/// An alloy is no part of it: two golds that lead to the same joint and clasp share their solids. A sprue depends on the brief's own sizes of
/// sprues too, and its box on how the pattern is enlarged and meshed. Safe from several threads; a solid that two ask for at once is measured once.
/// It lives as long as one grid: work that was stopped stays unfinished in it.
/// </remarks>
public sealed class VolumeBook
{
    private readonly ConcurrentDictionary<Key, Lazy<double>> volumes = new();
    private readonly ConcurrentDictionary<SprueKey, Lazy<SpruedPart?>> sprued = new();
    private int asked;

    /// <summary>How many solids were asked for.</summary>
    public int Asked => asked;

    /// <summary>How many of them had to be measured.</summary>
    public int Measured => volumes.Count + sprued.Count;

    /// <summary>The volume of a part as set: as remembered, or measured and remembered, mm3.</summary>
    internal double Find(Piece piece, Part part, Func<double> measure)
    {
        Interlocked.Increment(ref asked);
        return volumes.GetOrAdd(Key.Of(piece, part), _ => new Lazy<double>(measure)).Value;
    }

    /// <summary>A part as cast with its sprue: as remembered, or made and remembered; null where it has no surface.</summary>
    internal SpruedPart? FindSprued(Piece piece, Part part, Func<SpruedPart?> make)
    {
        Interlocked.Increment(ref asked);
        var found = sprued.GetOrAdd(SprueKey.Of(piece, part), _ => new Lazy<SpruedPart?>(make)).Value;

        // The same solid, but another line may have more of it.
        return found is null ? null : found with { Part = part };
    }

    // A link does not see the clasp; a pin sees neither the clasp nor the pitch, but keeping it with the link is simpler.
    private sealed record Key(PartRole Role, LinkForm Link, ClaspForm? Clasp, BrilliantProportions Proportions, LineSpec Spec)
    {
        public static Key Of(Piece piece, Part part) => new(
            part.Role,
            piece.Link,
            part.Role is PartRole.Link or PartRole.Pin ? null : piece.Clasp,
            piece.Stone.Proportions,
            piece.Design.Spec! with { Stone = NoStone, CastYieldMPa = 0, DrawnYieldMPa = 0, ModulusMPa = 0, TongueStrainLimit = 0 });
    }

    private sealed record SprueKey(Key Part, double? SprueMm, double LengthMm, double AllowanceMm, double PatternScale, double DeviationUm)
    {
        public static SprueKey Of(Piece piece, Part part)
        {
            var (process, chain) = (piece.Design.Brief.Process, piece.Design.Brief.Chain);
            return new SprueKey(Key.Of(piece, part), process.SprueMm, process.SprueLengthMm, chain.AllowanceMm(FaceKind.Polished), chain.PatternScale, process.MeshDeviationUm);
        }
    }

    // The body is cut anew for every design; the diameter stands in the link's form, the proportions in the key.
    private static readonly Stone NoStone = null!;
}
