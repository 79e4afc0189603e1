using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>The line pulled taut on a table: links along +x from the origin, the clasp after the last.</summary>
/// <param name="Placements">First link's origin in the origin.</param>
public sealed record FlatFit(ImmutableArray<LinkPlacement> Placements)
{
    /// <summary>Lays the line out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A length is no number or not above 0, or there are too few links.</exception>
    public static FlatFit Solve(HingeChain chain)
    {
        ArgumentNullException.ThrowIfNull(chain);
        _ = chain.Checked();
        var hinges = new List<Vec3>(chain.Count + 2);
        for (var i = 0; i <= chain.Count; i++)
        {
            hinges.Add(new Vec3((i - 0.5) * chain.PitchMm, 0, chain.HingeHeightMm));
        }

        hinges.Add(hinges[^1] + Vec3.UnitX * chain.ClaspMm);
        return new FlatFit(Placing.OnTable(hinges, chain.HingeHeightMm));
    }
}
