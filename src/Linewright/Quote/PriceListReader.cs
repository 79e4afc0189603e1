using System.Globalization;
using Linewright.Brief;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>Reads a price list: plain JSON in UTF-8, every field known, every value in its range, no row beside another that it contradicts.</summary>
/// <remarks>Never throws for what stands in a file, and collects every fault that can be seen in one pass, each with line and column.</remarks>
public static class PriceListReader
{
    /// <summary>Reads a list from a stream, and stops at 1 MiB. The file name is only for messages.</summary>
    public static PriceListResult Read(Stream stream, string fileName)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var bytes = new byte[BriefReader.LargestBytes + 1];
        var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return Read(bytes.AsMemory(0, length), fileName);
    }

    /// <summary>Reads a list from memory.</summary>
    public static PriceListResult Read(ReadOnlyMemory<byte> utf8, string fileName)
    {
        if (BriefReader.WholeFileFault(utf8.Span, "a price list") is { } whole)
        {
            return new PriceListResult(fileName, null, [whole]);
        }

        var scan = new PriceScan(utf8);
        var root = scan.Run();
        if (root is not null && scan.Faults.Count == 0)
        {
            PriceRules.Together(root, scan.Faults);
        }

        return root is not null && scan.Faults.Count == 0
            ? new PriceListResult(fileName, ListOf(root), [])
            : new PriceListResult(fileName, null, [.. scan.Faults.OrderBy(fault => fault.Line ?? int.MaxValue).ThenBy(fault => fault.Column)]);
    }

    private static PriceList ListOf(PriceNode root)
    {
        PriceNode? metal = root.At("metal"), patterns = root.At("patterns"), labour = root.At("labour"), markup = root.At("markup_percent"), tax = root.At("tax");
        var rates = (labour?.At("rates")?.Rows ?? []).ToDictionary(row => row.TextAt("rate")!, row => row.NumberAt("per_hour")!.Value, StringComparer.Ordinal);
        return new PriceList
        {
            Name = root.TextAt("name")!,
            Note = root.TextAt("note") ?? "",
            Date = Day(root.TextAt("date"))!.Value,
            ValidUntil = Day(root.TextAt("valid_until")),
            Validity = root.TextAt("validity") ?? "",
            Currency = MaterialTables.Currencies.Find(root.TextAt("currency")!),
            Alloys = ByText(metal?.At("alloys"), "metal", "price_per_g"),
            Elements = ByText(metal?.At("elements"), "element", "price_per_g"),
            AlloyingPercent = metal?.NumberAt("alloying_percent"),
            MeltLossPercent = ByFamily(metal?.At("melt_loss"), row => row.NumberAt("percent")!.Value),
            FilingsRecoveredPercent = metal?.NumberAt("filings_recovered_percent"),
            RefundPercent = metal?.NumberAt("refund_percent"),
            RefiningFee = metal?.NumberAt("refining_fee"),
            PerPlate = patterns?.NumberAt("per_plate"),
            PerPattern = patterns?.NumberAt("per_pattern"),
            Casting = ByFamily(root.At("casting"), row => (row.NumberAt("per_flask")!.Value, row.NumberAt("per_g")!.Value)),
            Stones = [.. Rows(root.At("stones"), "stones").Select(at => new StonePrice(
                at.Path, at.Row.TextAt("species")!, at.Row.TextAt("grade")!, at.Row.NumberAt("from_mm")!.Value, at.Row.NumberAt("to_mm")!.Value, at.Row.NumberAt("per_ct"), at.Row.NumberAt("each")))],
            Setting = [.. Rows(root.At("setting"), "setting").Select(at => new SettingPrice(
                at.Path, at.Row.TextAt("setting")!, at.Row.NumberAt("from_mm")!.Value, at.Row.NumberAt("to_mm")!.Value, Word<MetalFamily>(at.Row.TextAt("family")), at.Row.NumberAt("each")!.Value))],
            Operations = [.. Rows(labour?.At("operations"), "labour.operations").Select(at => new OperationPrice(
                at.Path, Word<Operation>(at.Row.TextAt("operation"))!.Value, Word<CountOf>(at.Row.TextAt("per"))!.Value, at.Row.NumberAt("minutes")!.Value,
                at.Row.TextAt("rate")!, rates[at.Row.TextAt("rate")!], Word<HingeKind>(at.Row.TextAt("hinge"))))],
            Findings = Counted(root, "findings"),
            Rhodium = root.At("plating")?.NumberAt("rhodium"),
            Assay = ByFamily(root.At("assay"), row => row.NumberAt("each")!.Value),
            Other = Counted(root, "other"),
            OverheadPercent = root.NumberAt("overhead_percent"),
            MetalMarkupPercent = markup?.NumberAt("metal"),
            StonesMarkupPercent = markup?.NumberAt("stones"),
            WorkMarkupPercent = markup?.NumberAt("work"),
            TaxName = tax?.TextAt("name"),
            TaxPercent = tax?.NumberAt("percent"),
        };
    }

    /// <summary>A word of the list as a member: hyphens stand between the parts of its name.</summary>
    internal static TEnum? Word<TEnum>(string? word)
        where TEnum : struct, Enum
        => word is null ? null : Enum.Parse<TEnum>(word.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);

    /// <summary>A day of the list.</summary>
    internal static DateOnly? Day(string? text) => text is null ? null : DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The rows of a list with their paths.</summary>
    internal static IEnumerable<(string Path, PriceNode Row)> Rows(PriceNode? list, string path)
        => (list?.Rows ?? []).Select((row, index) => (string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]"), row));

    private static List<CountedPrice>? Counted(PriceNode root, string name) => root.At(name) is { } list
        ? [.. Rows(list, name).Select(at => new CountedPrice(at.Path, at.Row.TextAt("name")!, Word<CountOf>(at.Row.TextAt("per"))!.Value, at.Row.NumberAt("each")!.Value))]
        : null;

    private static Dictionary<string, decimal> ByText(PriceNode? list, string key, string price)
        => (list?.Rows ?? []).ToDictionary(row => row.TextAt(key)!, row => row.NumberAt(price)!.Value, StringComparer.Ordinal);

    private static Dictionary<MetalFamily, TValue> ByFamily<TValue>(PriceNode? list, Func<PriceNode, TValue> value)
        => (list?.Rows ?? []).ToDictionary(row => Word<MetalFamily>(row.TextAt("family"))!.Value, value);
}
