using System.Collections.Immutable;
using System.Numerics;
using Linewright.Solids.Space;

namespace Linewright.Pictures.Spectra;

/// <summary>Complex indices of the elements, and of alloys mixed from them.</summary>
/// <remarks>
/// An alloy's permittivity is the mean of its parts', weighted by their share of atoms. Assumed: noble metals
/// have much the same atomic volume, and their mixed crystals shift the edge of absorption smoothly. Two exceptions:
/// zinc goes with copper as the brass that was measured, see <see cref="Brass"/>, and the whiteners count for more, see
/// <see cref="Whitening"/>.
/// </remarks>
public static class MetalTable
{
    /// <summary>How many times its atoms a whitener counts for among noble metals.</summary>
    /// <remarks>
    /// Assumed: a straight mean leaves white gold yellow, because it knows nothing of the d-states that palladium,
    /// nickel and platinum put right below the noble metals' edge. Fitted: with 6 the white golds of 18 ct come into the grades
    /// that the trade measures for them (yellowness under 24.5: good or reasonable white).
    /// </remarks>
    public const double Whitening = 6;

    private static readonly ImmutableArray<string> Noble = ["Au", "Ag", "Cu", "Zn"];
    private static readonly ImmutableArray<string> Whiteners = ["Pd", "Ni", "Pt"];

    /// <summary>One element by its symbol.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The table has no such element.</exception>
    public static ComplexIndex Element(string symbol)
    {
        var row = LightTables.Metal(symbol);
        return row.Like is { } like ? Element(like) with { Name = row.Name, Source = row.Source } : Index(row);
    }

    /// <summary>An alloy from its composition.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="massPercent">Symbol of each element and its mass in %; need not add up to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">An unknown element, or nothing at all.</exception>
    public static ComplexIndex Mixture(string name, IReadOnlyDictionary<string, double> massPercent)
    {
        ArgumentNullException.ThrowIfNull(massPercent);
        var isNoble = massPercent.Where(p => Noble.Contains(p.Key, StringComparer.Ordinal)).Sum(p => p.Value) > 50;
        var atoms = massPercent.ToDictionary(p => p.Key, p => p.Value / LightTables.Metal(p.Key).AtomicMass, StringComparer.Ordinal);
        List<(ComplexIndex Index, double Weight)> parts = [.. Brass(atoms)];
        parts.AddRange(atoms.OrderBy(p => p.Key, StringComparer.Ordinal).Where(p => p.Value > 0).Select(p => (
            Element(p.Key), isNoble && Whiteners.Contains(p.Key, StringComparer.Ordinal) ? p.Value * Whitening : p.Value)));
        var total = Guard.Positive(parts.Sum(p => p.Weight), nameof(massPercent));
        if (parts.Count == 1)
        {
            return parts[0].Index with { Name = name };
        }

        return ComplexIndex.FromPermittivity(
            name,
            nm => parts.Aggregate(Complex.Zero, (sum, p) => sum + p.Weight / total * p.Index.Permittivity(nm)),
            "Calculated: permittivities of the elements, mean by share of atoms, zinc and copper as measured brass. Assumed: whiteners in noble metal count six times");
    }

    /// <summary>Takes copper and zinc out of a composition, as the two nearest metals among copper and the brasses that were measured.</summary>
    /// <remarks>
    /// Measured brass is yellow, where a mean of copper and of what may stand in for zinc stays pink. Zinc beyond the richest
    /// brass in the table is left as an element.
    /// </remarks>
    /// <param name="atoms">Share of atoms of each element; what is taken is left out.</param>
    private static IEnumerable<(ComplexIndex Index, double Weight)> Brass(Dictionary<string, double> atoms)
    {
        if (!atoms.TryGetValue("Cu", out var copper) || copper <= 0 || !atoms.TryGetValue("Zn", out var zinc) || zinc <= 0)
        {
            return [];
        }

        (ComplexIndex Index, double Zinc)[] steps = [(Element("Cu"), 0), .. LightTables.Pair("Cu", "Zn").Select(row => (Index(row), ZincAtoms(row)))];
        var richest = steps[^1].Zinc;
        var taken = Math.Min(zinc, copper * richest / (1 - richest));
        atoms["Cu"] = 0;
        atoms["Zn"] = zinc - taken;
        double all = copper + taken, share = taken / all;
        var above = Math.Max(1, Array.FindIndex(steps, step => step.Zinc >= share - 1e-9));
        var (poorer, richer) = (steps[above - 1], steps[above]);
        var way = (share - poorer.Zinc) / (richer.Zinc - poorer.Zinc);
        return [(poorer.Index, all * (1 - way)), (richer.Index, all * way)];
    }

    private static double ZincAtoms(LightTables.MetalRow row)
    {
        double Atoms(string symbol) => row.MassPercent![symbol] / LightTables.Metal(symbol).AtomicMass;
        return Atoms("Zn") / (Atoms("Cu") + Atoms("Zn"));
    }

    private static ComplexIndex Index(LightTables.MetalRow row)
        => new(row.Name, new Spectrum(row.Nm, row.N), new Spectrum(row.Nm, row.K), row.Source);
}
