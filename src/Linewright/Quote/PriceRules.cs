using System.Globalization;
using Linewright.Brief;

namespace Linewright.Quote;

/// <summary>What the rows of a price list must be to each other: no two may answer the same question.</summary>
internal static class PriceRules
{
    /// <summary>Adds a fault for every value that contradicts another.</summary>
    public static void Together(PriceNode root, List<BriefFault> faults)
    {
        var metal = root.At("metal");
        Once(metal?.At("alloys"), "metal.alloys", ["metal"], faults);
        Once(metal?.At("elements"), "metal.elements", ["element"], faults);
        Once(metal?.At("melt_loss"), "metal.melt_loss", ["family"], faults);
        Once(root.At("casting"), "casting", ["family"], faults);
        Once(root.At("assay"), "assay", ["family"], faults);
        Once(root.At("labour")?.At("rates"), "labour.rates", ["rate"], faults);
        Bands(root.At("stones"), "stones", ["species", "grade"], faults);
        Bands(root.At("setting"), "setting", ["setting", "family"], faults);
        Prices(root.At("stones"), faults);
        Rates(root.At("labour"), faults);
        if (PriceListReader.Day(root.TextAt("valid_until")) is { } end && PriceListReader.Day(root.TextAt("date")) is { } start && end < start)
        {
            Fault(root.At("valid_until")!, "valid_until", root.TextAt("valid_until")!, $"a day from {root.TextAt("date")} on", "a quote cannot end before its prices begin", faults);
        }
    }

    private static void Once(PriceNode? list, string path, string[] keys, List<BriefFault> faults)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (at, row) in PriceListReader.Rows(list, path))
        {
            if (!seen.Add(KeyOf(row, keys)))
            {
                Fault(row, at, $"{KeyOf(row, keys)} a second time", "every one once", "remove one of the two rows", faults);
            }
        }
    }

    private static void Bands(PriceNode? list, string path, string[] keys, List<BriefFault> faults)
    {
        var seen = new List<(string Key, string Path, decimal From, decimal To)>();
        foreach (var (at, row) in PriceListReader.Rows(list, path))
        {
            decimal from = row.NumberAt("from_mm")!.Value, to = row.NumberAt("to_mm")!.Value;
            if (from >= to)
            {
                Fault(row.At("to_mm")!, $"{at}.to_mm", Words(to), $"more than from_mm, {Words(from)}", "raise it, or lower from_mm", faults);
            }
            else if (seen.FirstOrDefault(other => other.Key == KeyOf(row, keys) && from < other.To && other.From < to) is { Path: { } earlier } overlap)
            {
                Fault(row.At("from_mm")!, $"{at}.from_mm", $"a band that overlaps {earlier}", $"bands of {KeyOf(row, keys)} that only meet", $"that one runs from {Words(overlap.From)} to {Words(overlap.To)}", faults);
            }
            else
            {
                seen.Add((KeyOf(row, keys), at, from, to));
            }
        }
    }

    private static void Prices(PriceNode? stones, List<BriefFault> faults)
    {
        foreach (var (at, row) in PriceListReader.Rows(stones, "stones"))
        {
            var given = (row.NumberAt("per_ct") is null ? 0 : 1) + (row.NumberAt("each") is null ? 0 : 1);
            if (given != 1)
            {
                Fault(row, at, given == 0 ? "neither per_ct nor each" : "per_ct beside each", "one price", given == 0 ? "add \"per_ct\" or \"each\"" : "remove one of the two", faults);
            }
        }
    }

    private static void Rates(PriceNode? labour, List<BriefFault> faults)
    {
        var known = (labour?.At("rates")?.Rows ?? []).Select(row => row.TextAt("rate")!).ToHashSet(StringComparer.Ordinal);
        foreach (var (at, row) in PriceListReader.Rows(labour?.At("operations"), "labour.operations"))
        {
            if (row.TextAt("rate") is { } rate && !known.Contains(rate))
            {
                Fault(row.At("rate")!, $"{at}.rate", $"\"{BriefScan.Plain(rate)}\"", "one of labour.rates", known.Count == 0 ? "add \"rates\"" : "known are " + string.Join(", ", known), faults);
            }
        }
    }

    private static string KeyOf(PriceNode row, string[] keys) => string.Join(", ", keys.Select(row.TextAt).OfType<string>());

    private static string Words(decimal number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static void Fault(PriceNode at, string path, string read, string expected, string hint, List<BriefFault> faults)
        => faults.Add(new BriefFault(path, at.Line, at.Column, read, expected, hint));
}
