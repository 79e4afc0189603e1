using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Linewright.Materials;

/// <summary>The front door of the materials: every table, read once from the data files inside the program.</summary>
public static class MaterialTables
{
    /// <summary>Elements by symbol, for the rule of mixtures.</summary>
    public static MaterialTable<Element> Elements { get; } = Read("elements", "element", MaterialsJson.Default.ElementArray);

    /// <summary>Alloys by key, family-fineness-colour or alloying: gold-750-yellow.</summary>
    public static MaterialTable<Alloy> Alloys { get; } = Read("alloys", "alloy", MaterialsJson.Default.AlloyArray);

    /// <summary>Stones by species: diamond, laboratory-grown-diamond.</summary>
    public static MaterialTable<Species> Species { get; } = Read("species", "species", MaterialsJson.Default.SpeciesArray);

    /// <summary>Casting habits by metal family: gold, silver.</summary>
    public static MaterialTable<ProcessDefaults> Processes { get; } = Read("processes", "metal family", MaterialsJson.Default.ProcessDefaultsArray);

    /// <summary>Currencies by the letters of ISO 4217: EUR.</summary>
    public static MaterialTable<Currency> Currencies { get; } = Read("currencies", "currency", MaterialsJson.Default.CurrencyArray);

    /// <summary>Sieve sizes of small round diamonds, by rising diameter.</summary>
    public static MaterialTable<SieveSize> Sieves { get; } = Read("sieves", "sieve size", MaterialsJson.Default.SieveSizeArray);

    /// <summary>Steps between drawing and finished part, by key: printed-resin, investment-casting.</summary>
    public static MaterialTable<ProcessStep> Steps { get; } = Read("processes-steps", "process step", MaterialsJson.Default.ProcessStepArray);

    /// <summary>Ways from drawing to finished part, by key: printed-resin, carved-wax-mould.</summary>
    public static MaterialTable<ProcessRoute> Routes { get; } = Read("processes-routes", "process route", MaterialsJson.Default.ProcessRouteArray);

    /// <summary>What the bench holds, by key: reamed-hole, closed-eye.</summary>
    public static MaterialTable<ProcessFit> Fits { get; } = Read("processes-fits", "fit", MaterialsJson.Default.ProcessFitArray);

    /// <summary>The casting habits of an alloy's family.</summary>
    public static ProcessDefaults ProcessOf(Alloy alloy) => Processes.Find(JsonNamingPolicy.KebabCaseLower.ConvertName(alloy.Family.ToString()));

    private static MaterialTable<TRow> Read<TRow>(string file, string noun, JsonTypeInfo<TRow[]> shape)
        where TRow : IMaterialRow
    {
        using var stream = typeof(MaterialTables).Assembly.GetManifestResourceStream($"data/{file}.json")
            ?? throw new InvalidOperationException($"The program was built without data/{file}.json.");
        return new MaterialTable<TRow>(noun, JsonSerializer.Deserialize(stream, shape)!);
    }
}
