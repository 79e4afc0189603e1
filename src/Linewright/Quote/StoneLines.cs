using System.Text.Json;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>Stones, spares and setting, from the bands of the price list.</summary>
internal static class StoneLines
{
    /// <summary>Adds stones and setting; the grade that was taken comes back, empty where none could be.</summary>
    public static string Add(Ledger ledger, QuoteBasis basis, PriceList list, string? grade)
    {
        var order = basis.Stones;
        var size = (decimal)order.DiameterMm;
        var row = RowOf(ledger, order.Species, size, list, grade);
        if (row is not null)
        {
            Buy("stones to be set", order.Count);
            Buy("spares", order.Spares);
        }

        Setting(ledger, basis, list, size);
        return row?.Grade ?? "";

        void Buy(string what, int count)
        {
            var name = $"{what}, {order.Species}, {row!.Grade}";
            if (row.Each is { } each)
            {
                ledger.Add(QuoteGroup.Stones, name, count, "stones", each, row.Path, "stone order");
                return;
            }

            var carats = count * order.EachCt;
            ledger.Add(
                QuoteGroup.Stones, name, carats, "ct", row.PerCt, row.Path, "stone order",
                FormattableString.Invariant($"{count} x {Ledger.Figure(order.EachCt)} ct = {Ledger.Figure(carats)} ct; "));
        }
    }

    private static StonePrice? RowOf(Ledger ledger, string species, decimal size, PriceList list, string? grade)
    {
        var rows = list.Stones.Where(row => row.Species == species && row.Holds(size)).ToList();
        var wanted = grade is null ? rows : [.. rows.Where(row => row.Grade == grade)];
        if (wanted.Count == 1)
        {
            return wanted[0];
        }

        if (wanted.Count == 0)
        {
            var others = rows.Count > 0 ? $"; the list has {string.Join(", ", rows.Select(row => $"\"{row.Grade}\""))}" : "";
            ledger.Need("stones", $"a row for {species}{(grade is null ? "" : $" of grade \"{grade}\"")} with a band that holds {Ledger.Figure(size)} mm: per_ct or each{others}");
        }
        else
        {
            ledger.Need("stones", $"a grade to choose: the list has {string.Join(", ", wanted.Select(row => $"\"{row.Grade}\""))} for {species} of {Ledger.Figure(size)} mm; say which with --grade");
        }

        return null;
    }

    private static void Setting(Ledger ledger, QuoteBasis basis, PriceList list, decimal size)
    {
        var family = MaterialTables.Alloys.Find(basis.Metal).Family;
        var rows = list.Setting.Where(row => row.Holds(size) && (row.Family is null || row.Family == family)).ToList();
        if ((rows.FirstOrDefault(row => row.Family is not null) ?? rows.FirstOrDefault()) is { } row)
        {
            ledger.Add(QuoteGroup.Setting, $"setting, {row.Setting}", basis.Stones.Count, "stones", row.Each, row.Path, "counted on the piece");
        }
        else
        {
            ledger.Need("setting", $"a row for claw with a band that holds {Ledger.Figure(size)} mm, for {JsonNamingPolicy.KebabCaseLower.ConvertName(family.ToString())} or any metal: each");
        }
    }
}
