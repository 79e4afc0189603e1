using System.Globalization;
using System.Text.Json;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>Labour, findings, plating, assay and what else a piece carries.</summary>
internal static class WorkLines
{
    /// <summary>Adds everything between setting and overhead.</summary>
    public static void Add(Ledger ledger, QuoteBasis basis, PriceList list)
    {
        foreach (var operation in Enum.GetValues<Operation>().Where(operation => operation != Operation.Plating || basis.RhodiumUm > 0))
        {
            var rows = list.Operations.Where(row => row.Operation == operation && (row.Hinge is null || row.Hinge == basis.Hinge)).ToList();
            foreach (var row in rows)
            {
                ledger.Work(Words(operation), basis.Count(row.Per), Counted(row.Per, basis.Count(row.Per)), row);
            }

            if (rows.Count == 0)
            {
                ledger.Need("labour.operations", $"a row for {Key(operation)}{(operation == Operation.Joint ? $" with hinge {Key(basis.Hinge)}, {basis.Joints.ToString(CultureInfo.InvariantCulture)} joints" : "")}: per, minutes and rate");
            }
        }

        Rows(ledger, basis, QuoteGroup.Findings, list.Findings, "findings");
        if (basis.RhodiumUm > 0)
        {
            ledger.Add(QuoteGroup.Plating, "rhodium plate", 1, "piece", list.Rhodium, "plating.rhodium", FormattableString.Invariant($"finish.rhodium_um {basis.RhodiumUm:0.##}"));
        }

        Assay(ledger, basis, list);
        Rows(ledger, basis, QuoteGroup.Other, list.Other, "other");
    }

    // Brass and bronze are not hallmarked.
    private static void Assay(Ledger ledger, QuoteBasis basis, PriceList list)
    {
        var alloy = MaterialTables.Alloys.Find(basis.Metal);
        if (alloy.Family is MetalFamily.Brass or MetalFamily.Bronze)
        {
            return;
        }

        var family = Key(alloy.Family);
        decimal? price = list.Assay.TryGetValue(alloy.Family, out var known) ? known : null;
        if (price is null)
        {
            ledger.Need("assay", $"a row for {family}: each; write 0 where no mark is struck");
            return;
        }

        ledger.Add(QuoteGroup.Assay, FormattableString.Invariant($"assay and hallmark, {Fineness(alloy)}"), 1, "piece", price, $"assay, {family}", "one assay for this piece alone; fineness of the alloy");
    }

    private static void Rows(Ledger ledger, QuoteBasis basis, QuoteGroup group, IReadOnlyList<CountedPrice>? rows, string path)
    {
        if (rows is null)
        {
            ledger.Need(path, $"a list of {path}; write [ ] where the shop charges none");
            return;
        }

        foreach (var row in rows.Where(row => basis.Count(row.Per) > 0))
        {
            ledger.Add(group, row.Name, basis.Count(row.Per), Counted(row.Per, basis.Count(row.Per)), row.Each, row.Path, "counted on the piece");
        }
    }

    /// <summary>The fineness as a mark says it: 750 for gold of 750 parts in a thousand.</summary>
    internal static string Fineness(Alloy alloy) => alloy.FinenessPerMille.ToString("0", CultureInfo.InvariantCulture);

    private static string Counted(CountOf per, int count) => Key(per) + (count == 1 ? "" : "s");

    private static string Words(Operation operation) => Key(operation).Replace('-', ' ');

    private static string Key<TEnum>(TEnum word)
        where TEnum : struct, Enum
        => JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString());
}
