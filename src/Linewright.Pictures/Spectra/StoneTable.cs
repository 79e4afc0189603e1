using System.Collections.Immutable;

namespace Linewright.Pictures.Spectra;

/// <summary>Every species of the house as light sees it; rows in data/light/stones.json.</summary>
/// <remarks>
/// A body colour is a sum of bell-shaped bands (centre and standard deviation in nm, strength in 1/mm). Where the bands
/// lie is known; how strong they are differs from stone to stone, so a row is one good stone, fitted by eye.
/// </remarks>
public static class StoneTable
{
    /// <summary>Names of all rows.</summary>
    public static ImmutableArray<string> Names { get; } = [.. LightTables.Stones.Select(row => row.Key)];

    /// <summary>One row.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such row.</exception>
    public static StoneOptics Find(string name)
    {
        var row = LightTables.Stones.FirstOrDefault(r => string.Equals(r.Key, name, StringComparison.Ordinal))
            ?? throw new ArgumentOutOfRangeException(nameof(name), name, "no such species; the table has " + string.Join(", ", Names));
        var index = row.Sellmeier is { } s
            ? RefractiveIndex.Sellmeier(s.Constant, s.Terms.Select(t => (t[0], t[1])))
            : RefractiveIndex.FromTrade(row.IndexD, row.BMinusG);
        var absorption = row.Bands.Count == 0 ? Spectrum.Zero : Spectrum.Of(nm => row.Bands.Sum(band => Band(nm, band)));
        return new StoneOptics(row.Key, index, absorption, row.Source + " Mark: " + row.Mark + ".");
    }

    private static double Band(double nm, List<double> band)
    {
        var away = (nm - band[0]) / band[1];
        return band[2] * Math.Exp(-0.5 * away * away);
    }
}
