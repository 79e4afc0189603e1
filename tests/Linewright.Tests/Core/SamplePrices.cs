using Linewright.Brief;
using Linewright.Making;
using Linewright.Materials;
using Linewright.Quote;

namespace Linewright.Tests.Core;

/// <summary>The worked example of docs/notes/quote.md: a piece in round figures and the price list of the examples.</summary>
internal static class SamplePrices
{
    /// <summary>Path of the example list in the repository.</summary>
    public static string File { get; } = Path.Combine(Repository.Root, "examples/prices-lantern-quay.json");

    /// <summary>The example list with one price more: gold at 59.89 a gram, as the worked example has it.</summary>
    public static PriceList Worked => Example with { Alloys = new Dictionary<string, decimal>(Example.Alloys, StringComparer.Ordinal) { ["gold-750-yellow"] = 59.89m } };

    /// <summary>The example list.</summary>
    public static PriceList Example { get; } = Read();

    /// <summary>48 links with 3 mm stones of 0.1000 ct; 12.40 g finished, 13.48 g as cast, 41.20 g to melt.</summary>
    public static QuoteBasis Basis { get; } = new(
        "Worked example", "gold-750-yellow", HingeKind.EyeOverBar, 12.40m, 0, 13.48m, 41.20m, 48, 49, 51, 0, 0, 177.8, 3.5, 9.8,
        new StoneOrder(
            "round", "diamond", "natural", 3, 2.94, 3.04, 1.84, 2.2, "claws", "+12 -12.5", "fits", 48, 4, 2, 50, 0.1000m, 4.8m, 5m, ["50 round brilliants."], Marks.CommonPractice));

    private static PriceList Read()
    {
        using var stream = System.IO.File.OpenRead(File);
        var result = PriceListReader.Read(stream, "prices");
        return result.List ?? throw new InvalidOperationException(string.Join('\n', result.Messages));
    }
}
