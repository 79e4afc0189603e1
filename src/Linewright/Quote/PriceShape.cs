using System.Text.Json;
using Linewright.Materials;

namespace Linewright.Quote;

/// <summary>Every field that a price list may have, in the order in which a shop would write them.</summary>
/// <remarks>
/// Only what says whose prices these are must be there. A quote names what it misses, so a list may begin short and grow.
/// An empty list in brackets says that the shop charges nothing of that kind; a list left out says nothing.
/// </remarks>
internal static class PriceShape
{
    private const decimal MostMoney = 1_000_000_000, MostPercent = 1000;

    private static readonly string[] Families = [.. Enum.GetNames<MetalFamily>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName)];

    private static readonly PriceField From = Number("from_mm", 0, 100, "Smallest stone of the band; it belongs to the band.").Required();

    private static readonly PriceField To = Number("to_mm", 0, 100, "Where the next band begins; a stone of this size belongs there.").Required();

    /// <summary>The list itself.</summary>
    public static PriceField Root { get; } = Group("", "What a workshop pays and asks.", [
        Text("$schema", "Where the schema of this file lies; for editors, otherwise ignored."),
        Text("name", "Whose prices these are.").Required(),
        Text("note", "Printed on every quote, such as that the prices are invented."),
        new("date", PriceKind.Day, "The day of the prices; printed on every quote.") { IsRequired = true, Example = "2026-03-02" },
        new("valid_until", PriceKind.Day, "The last day on which a quote from these prices is meant to hold.") { Example = "2026-03-31" },
        Text("validity", "Words on how long a quote holds, printed for the client."),
        Choice("currency", MaterialTables.Currencies.Keys, "EUR", "ISO 4217.").Required(),
        Group("metal", "Metal, bought and sent back.", [
            List("alloys", "Price of an alloy as cast grain or wire.", [
                Choice("metal", MaterialTables.Alloys.Keys, "gold-750-yellow", "The alloy.").Required(),
                Money("price_per_g", "What the shop pays for a gram.").Required(),
            ]),
            List("elements", "Prices of pure metals; an alloy without its own row is mixed from them.", [
                Choice("element", MaterialTables.Elements.Keys, "Au", "The element's symbol.").Required(),
                Money("price_per_g", "What the shop pays for a gram.").Required(),
            ]),
            Percent("alloying_percent", "What the alloy maker adds to the value of the elements."),
            List("melt_loss", "What burns, spatters and stays in the crucible, of all that is melted.", [
                Choice("family", Families, "gold", "The metal's family.").Required(),
                Number("percent", 0, 50, "Of the metal melted.").Required(),
            ]),
            Number("filings_recovered_percent", 0, 100, "How much of what filing and polishing take is swept up and refined."),
            Number("refund_percent", 0, 100, "What sprues, stems, buttons and filings bring back, of the price of the metal."),
            Money("refining_fee", "The refiner's fee, as it falls on one piece."),
        ]),
        Group("patterns", "Printing the patterns.", [
            Money("per_plate", "For a printed plate."),
            Money("per_pattern", "For each pattern on it."),
        ]),
        List("casting", "Casting, by the metal's family.", [
            Choice("family", Families, "gold", "The metal's family.").Required(),
            Money("per_flask", "For a flask.").Required(),
            Money("per_g", "For each gram cast.").Required(),
        ]),
        List("stones", "Stones by species, grade and size band.", [
            Choice("species", MaterialTables.Species.Keys, "diamond", "The species.").Required(),
            Text("grade", "Colour and clarity, or whatever the shop sorts by.").Required(),
            From,
            To,
            Money("per_ct", "Price of a carat; a row has this or each."),
            Money("each", "Price of a stone; a row has this or per_ct."),
        ]),
        List("setting", "Setting a stone, by kind and size band.", [
            Choice("setting", ["claw"], "claw", "How the stone is held.").Required(),
            From,
            To,
            Choice("family", Families, "platinum", "Only in metal of this family; such a row goes before one without."),
            Money("each", "For a stone.").Required(),
        ]),
        Group("labour", "Work at the bench and the desk.", [
            List("rates", "What an hour costs.", [
                Text("rate", "Its name, such as bench.").Required(),
                Money("per_hour", "For an hour.").Required(),
            ]),
            List("operations", "How long each operation takes.", [
                Choice("operation", [.. Enum.GetNames<Operation>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName)], "joint", "The operation.").Required(),
                Choice("per", [.. Enum.GetNames<CountOf>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName)], "joint", "What its minutes are counted by.").Required(),
                Number("minutes", 0, 100_000, "Minutes for each.").Required(),
                Text("rate", "One of the rates.").Required(),
                Choice("hinge", ["eye-over-bar", "pinned-knuckles"], "eye-over-bar", "Only in lines with this hinge."),
            ]),
        ]),
        Counted("findings", "What is bought ready and goes into the piece: wire, solder, tags."),
        Group("plating", "Plating by the dip.", [Money("rhodium", "For a piece.")]),
        List("assay", "Assay and hallmark, by the metal's family.", [
            Choice("family", Families, "gold", "The metal's family.").Required(),
            Money("each", "For a piece, with its share of the lot's fee.").Required(),
        ]),
        Counted("other", "Packing, insurance, carriage and whatever else a piece carries."),
        Percent("overhead_percent", "Rent, tools, insurance and the like, added on labour and setting."),
        Group("markup_percent", "What is added on cost, never a share of the price.", [
            Percent("metal", "On metal and casting."),
            Percent("stones", "On stones."),
            Percent("work", "On everything else."),
        ]),
        Group("tax", "Tax on the sale where the shop sells.", [
            Text("name", "What it is called.").Required(),
            Number("percent", 0, 100, "Of the price before tax.").Required(),
        ]),
    ]);

    private static PriceField Text(string name, string help) => new(name, PriceKind.Text, help);

    private static PriceField Number(string name, decimal low, decimal high, string help) => new(name, PriceKind.Number, help) { Low = low, High = high };

    private static PriceField Money(string name, string help) => Number(name, 0, MostMoney, help);

    private static PriceField Percent(string name, string help) => Number(name, 0, MostPercent, help);

    private static PriceField Choice(string name, IReadOnlyList<string> words, string example, string help)
        => new(name, PriceKind.Choice, help) { Choices = words, Example = example };

    private static PriceField Group(string name, string help, IReadOnlyList<PriceField> fields) => new(name, PriceKind.Group, help) { Fields = fields };

    private static PriceField List(string name, string help, IReadOnlyList<PriceField> fields) => new(name, PriceKind.List, help) { Fields = fields };

    private static PriceField Counted(string name, string help) => List(name, help, [
        Text("name", "What it is.").Required(),
        Choice("per", [.. Enum.GetNames<CountOf>().Select(JsonNamingPolicy.KebabCaseLower.ConvertName)], "piece", "What it is counted by.").Required(),
        Money("each", "For each.").Required(),
    ]);
}
