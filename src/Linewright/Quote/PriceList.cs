using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>What a workshop pays and asks, as its own list says. Nothing is fetched, and nothing that the list leaves out is made up.</summary>
/// <remarks>
/// Amounts are decimals in <see cref="Currency"/>, before tax. A null price is not zero: a quote that needs it is refused and names it.
/// Comes from <see cref="PriceListReader"/>; front door for reading is there.
/// </remarks>
public sealed record PriceList
{
    /// <summary>Whose prices these are.</summary>
    public required string Name { get; init; }

    /// <summary>What the shop wants printed on every quote; empty where nothing.</summary>
    public required string Note { get; init; }

    /// <summary>The day of the prices.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The last day on which a quote is meant to hold; null where the list does not say.</summary>
    public required DateOnly? ValidUntil { get; init; }

    /// <summary>Words on how long a quote holds; empty where there are none.</summary>
    public required string Validity { get; init; }

    /// <summary>The currency of every amount.</summary>
    public required Currency Currency { get; init; }

    /// <summary>Prices of alloys, per gram, by key.</summary>
    public required IReadOnlyDictionary<string, decimal> Alloys { get; init; }

    /// <summary>Prices of pure metals, per gram, by symbol.</summary>
    public required IReadOnlyDictionary<string, decimal> Elements { get; init; }

    /// <summary>What the alloy maker adds to the value of the elements, %.</summary>
    public decimal? AlloyingPercent { get; init; }

    /// <summary>What is lost of all that is melted, %, by family.</summary>
    public required IReadOnlyDictionary<MetalFamily, decimal> MeltLossPercent { get; init; }

    /// <summary>How much of filings and polishings is swept up and refined, %.</summary>
    public decimal? FilingsRecoveredPercent { get; init; }

    /// <summary>What comes back for sprues, stems, buttons and filings, % of the metal's price.</summary>
    public decimal? RefundPercent { get; init; }

    /// <summary>The refiner's fee for one piece.</summary>
    public decimal? RefiningFee { get; init; }

    /// <summary>For a printed plate of patterns.</summary>
    public decimal? PerPlate { get; init; }

    /// <summary>For each pattern on it.</summary>
    public decimal? PerPattern { get; init; }

    /// <summary>For a flask and for each gram cast, by family.</summary>
    public required IReadOnlyDictionary<MetalFamily, (decimal PerFlask, decimal PerG)> Casting { get; init; }

    /// <summary>Stones, in the list's order.</summary>
    public required IReadOnlyList<StonePrice> Stones { get; init; }

    /// <summary>Setting, in the list's order.</summary>
    public required IReadOnlyList<SettingPrice> Setting { get; init; }

    /// <summary>Operations with their rate per hour, in the list's order.</summary>
    public required IReadOnlyList<OperationPrice> Operations { get; init; }

    /// <summary>What is bought ready; null where the list does not say, empty where nothing is.</summary>
    public IReadOnlyList<CountedPrice>? Findings { get; init; }

    /// <summary>Rhodium plate, a piece.</summary>
    public decimal? Rhodium { get; init; }

    /// <summary>Assay and hallmark, a piece, by family.</summary>
    public required IReadOnlyDictionary<MetalFamily, decimal> Assay { get; init; }

    /// <summary>Packing and the like; null where the list does not say, empty where nothing is charged.</summary>
    public IReadOnlyList<CountedPrice>? Other { get; init; }

    /// <summary>Overhead, % of labour and setting.</summary>
    public decimal? OverheadPercent { get; init; }

    /// <summary>Markup on the cost of metal and casting, %.</summary>
    public decimal? MetalMarkupPercent { get; init; }

    /// <summary>Markup on the cost of stones, %.</summary>
    public decimal? StonesMarkupPercent { get; init; }

    /// <summary>Markup on the cost of everything else, %.</summary>
    public decimal? WorkMarkupPercent { get; init; }

    /// <summary>What the tax is called; null where the list does not say.</summary>
    public string? TaxName { get; init; }

    /// <summary>Tax, % of the price before it.</summary>
    public decimal? TaxPercent { get; init; }
}
