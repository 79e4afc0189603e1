using System.Text.Json;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>Metal: all that is melted is bought, and what comes off again is sold back.</summary>
internal static class MetalLines
{
    /// <summary>Adds metal, patterns and casting.</summary>
    public static void Add(Ledger ledger, QuoteBasis basis, PriceList list)
    {
        var alloy = MaterialTables.Alloys.Find(basis.Metal);
        var (price, path, how) = PriceOf(ledger, alloy, list);
        var family = JsonNamingPolicy.KebabCaseLower.ConvertName(alloy.Family.ToString());
        const string solids = "weight of the solids";
        void Metal(string what, decimal grams, string before = "", string read = solids)
        {
            if (price is { } known)
            {
                ledger.Add(QuoteGroup.Metal, what, grams, "g", known, path, read, before);
            }
        }

        Metal("castings, finished", basis.CastPartsG, how);
        if (basis.DrawnG > 0)
        {
            Metal("pins of drawn wire", basis.DrawnG);
        }

        var filed = basis.CastG - basis.CastPartsG;
        Metal("filed and polished off", filed, $"{Ledger.Figure(basis.CastG)} - {Ledger.Figure(basis.CastPartsG)} = {Ledger.Figure(filed)} g; ");
        if (list.MeltLossPercent.TryGetValue(alloy.Family, out var percent))
        {
            Melt(ledger, basis, list, percent, (what, grams, before) => Metal(what, grams, before, "casting plan"), price, path);
        }
        else
        {
            ledger.Need("metal.melt_loss", $"a row for {family}: percent of all that is melted, here of {Ledger.Figure(basis.MeltG)} g");
        }

        Back(ledger, list, "filings, refined", filed, list.FilingsRecoveredPercent, "metal.filings_recovered_percent", price, path);
        ledger.Add(QuoteGroup.Metal, "the refiner's fee", 1, "piece", list.RefiningFee, "metal.refining_fee", "one lot for this piece alone");
        var (plate, flask) = (basis.Plates == 1 ? "plate" : "plates", basis.Trees == 1 ? "flask" : "flasks");
        ledger.Add(QuoteGroup.Casting, $"printed {plate}", basis.Plates, plate, list.PerPlate, "patterns.per_plate", "casting plan, for this piece alone");
        ledger.Add(QuoteGroup.Casting, "patterns", basis.Castings, "patterns", list.PerPattern, "patterns.per_pattern", "counted on the piece");
        if (list.Casting.TryGetValue(alloy.Family, out var casting))
        {
            ledger.Add(QuoteGroup.Casting, flask, basis.Trees, flask, casting.PerFlask, $"casting, {family}, per_flask", basis.Trees == 1 ? "one tree, for this piece alone" : "one a tree, by process.parts_per_tree, for this piece alone");
            ledger.Add(QuoteGroup.Casting, "casting", basis.CastG, "g", casting.PerG, $"casting, {family}, per_g", solids);
        }
        else
        {
            ledger.Need("casting", $"a row for {family}: per_flask and per_g, here for {Ledger.Figure(basis.CastG)} g");
        }
    }

    private static void Melt(Ledger ledger, QuoteBasis basis, PriceList list, decimal percent, Action<string, decimal, string> metal, decimal? price, string path)
    {
        var lost = basis.MeltG * percent / 100;
        var sprues = basis.MeltG - basis.CastG - lost;
        if (sprues < 0)
        {
            ledger.Need("metal.melt_loss", $"less than {Ledger.Figure(100 * (basis.MeltG - basis.CastG) / basis.MeltG)} %: no more can be lost than sprues, stems and buttons hold");
            return;
        }

        metal("lost in the melt", lost, $"{Ledger.Figure(percent)} % of {Ledger.Figure(basis.MeltG)} g = {Ledger.Figure(lost)} g; ");
        metal("sprues, stems and buttons", sprues, $"{Ledger.Figure(basis.MeltG)} - {Ledger.Figure(basis.CastG)} - {Ledger.Figure(lost)} = {Ledger.Figure(sprues)} g; ");
        Back(ledger, list, "sprues, stems and buttons, sent back", sprues, 100, "", price, path);
    }

    // What is sent back, at the refiner's share of the price.
    private static void Back(Ledger ledger, PriceList list, string what, decimal grams, decimal? share, string sharePath, decimal? price, string path)
    {
        if (list.RefundPercent is not { } refund)
        {
            ledger.Need("metal.refund_percent", "what the refiner pays for sprues, stems, buttons and filings, % of the metal's price");
        }

        if (share is not { } part)
        {
            ledger.Need(sharePath, $"how much of {Ledger.Figure(grams)} g filed and polished off is swept up, %");
        }

        if (list.RefundPercent is { } paid && share is { } swept && price is { } known)
        {
            var back = grams * swept / 100;
            var before = swept == 100 ? "" : $"{Ledger.Figure(swept)} % of {Ledger.Figure(grams)} g = {Ledger.Figure(back)} g; ";
            ledger.Add(
                QuoteGroup.Metal, what, -back, "g", known * paid / 100, "metal.refund_percent", sharePath.Length > 0 ? $"{path}; {sharePath}" : path,
                $"{before}{Ledger.Figure(paid)} % of {Ledger.Sum(known)} = {Ledger.Sum(known * paid / 100)} per g; ");
        }
    }

    // The list's own row for the alloy, or its elements by mass. Never a guess.
    private static (decimal? Price, string Path, string How) PriceOf(Ledger ledger, Alloy alloy, PriceList list)
    {
        if (list.Alloys.TryGetValue(alloy.Key, out var own))
        {
            return (own, $"metal.alloys, {alloy.Key}", "");
        }

        var elements = alloy.Composition.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key, StringComparer.Ordinal).ToList();
        var lacking = elements.Where(pair => !list.Elements.ContainsKey(pair.Key)).Select(pair => pair.Key).ToList();
        if (lacking.Count > 0 || list.AlloyingPercent is null)
        {
            var also = lacking.Count > 0 ? $"metal.elements rows for {string.Join(", ", lacking)}" : "";
            var adding = list.AlloyingPercent is null ? "metal.alloying_percent" : "";
            ledger.Need("metal.alloys", $"a row for {alloy.Key}: price_per_g; or {string.Join(" and ", new[] { also, adding }.Where(text => text.Length > 0))}");
            return (null, "", "");
        }

        var plain = elements.Sum(pair => (decimal)pair.Value / 100 * list.Elements[pair.Key]);
        var price = plain * (1 + list.AlloyingPercent.Value / 100);
        var terms = string.Join(" + ", elements.Select(pair => $"{Ledger.Figure((decimal)pair.Value)} % {pair.Key} x {Ledger.Sum(list.Elements[pair.Key])}"));
        return (price, $"metal.elements by the composition of {alloy.Key}; metal.alloying_percent",
            $"{terms} = {Ledger.Sum(plain)}, with {Ledger.Figure(list.AlloyingPercent.Value)} % for alloying {Ledger.Sum(price)} per g; ");
    }
}
