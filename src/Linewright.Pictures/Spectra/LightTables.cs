using System.Text.Json;

namespace Linewright.Pictures.Spectra;

/// <summary>The files in data/light, read once from inside the program.</summary>
internal static class LightTables
{
    private static readonly Lazy<List<CurveRow>> Curves = new(() => Read("observer", LightJson.Default.ListCurveRow));
    private static readonly Lazy<List<MetalRow>> Metals = new(() => Read("metals", LightJson.Default.ListMetalRow));
    private static readonly Lazy<List<StoneRow>> StoneRows = new(() => Read("stones", LightJson.Default.ListStoneRow));

    internal static IReadOnlyList<StoneRow> Stones => StoneRows.Value;

    internal static Spectrum Curve(string key)
    {
        var row = Curves.Value.First(r => string.Equals(r.Key, key, StringComparison.Ordinal));
        return new Spectrum(row.Values.Select((_, i) => row.FirstNm + i * row.StepNm), row.Values);
    }

    internal static MetalRow Metal(string symbol)
        => Metals.Value.FirstOrDefault(r => string.Equals(r.Key, symbol, StringComparison.Ordinal))
            ?? throw new ArgumentOutOfRangeException(nameof(symbol), symbol, "no such metal; the table has " + string.Join(", ", Metals.Value.Select(r => r.Key)));

    private static List<T> Read<T>(string name, System.Text.Json.Serialization.Metadata.JsonTypeInfo<List<T>> shape)
    {
        using var stream = typeof(LightTables).Assembly.GetManifestResourceStream("light/" + name + ".json")
            ?? throw new InvalidOperationException("the table of " + name + " is missing from the program");
        return JsonSerializer.Deserialize(stream, shape) ?? throw new JsonException("the table of " + name + " is empty");
    }

    /// <summary>A curve every few nm.</summary>
    internal sealed record CurveRow(string Key, double FirstNm, double StepNm, List<double> Values, string Source, string Mark);

    /// <summary>Metals that were measured as alloys of these two, by rising share of the second.</summary>
    internal static IEnumerable<MetalRow> Pair(string first, string second)
        => Metals.Value.Where(r => r.MassPercent is { Count: 2 } shares && shares.ContainsKey(first) && shares.ContainsKey(second))
            .OrderBy(r => r.MassPercent![second]);

    /// <summary>An element, or an alloy measured as such: its own curve, or the symbol of the one that stands in for it.</summary>
    internal sealed record MetalRow(string Key, string Name, double AtomicMass, string Source, string Mark)
    {
        public string? Like { get; init; }

        public Dictionary<string, double>? MassPercent { get; init; }

        public List<double> Nm { get; init; } = [];

        public List<double> N { get; init; } = [];

        public List<double> K { get; init; } = [];
    }

    /// <summary>A species: Sellmeier's terms, or the trade's two figures; bands of absorption.</summary>
    internal sealed record StoneRow(string Key, List<List<double>> Bands, string Source, string Mark)
    {
        public SellmeierRow? Sellmeier { get; init; }

        public double IndexD { get; init; }

        public double BMinusG { get; init; }
    }

    /// <summary>Terms of A and B, B in square micrometres.</summary>
    internal sealed record SellmeierRow(double Constant, List<List<double>> Terms);
}
