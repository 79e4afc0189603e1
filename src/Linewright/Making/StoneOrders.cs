using System.Globalization;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Stones;

namespace Linewright.Making;

/// <summary>Draws up the stone order of a design, from what its seats, its clearances and the shop's tolerance allow.</summary>
public static class StoneOrders
{
    // A bearing of 0.30 to 0.50 of the claw holds and leaves half of it standing. Source read: a setter's handbook; common practice.
    private const double ShallowestSeat = 0.30, DeepestSeat = 0.50;

    // What must stay: between two girdles with the stops met and the line slack; between pavilion and rail; from culet to skin.
    // Common practice: 0.05 to 0.10 between stones, 0.3 under a culet; a hair under the rail is assumed.
    private const double LeastGapMm = 0.05, LeastRailMm = 0.02, LeastCuletMm = 0.3;

    // Holes and bars stray by one standard deviation; 95 of 100 lie within two.
    private const double Deviations = 2;

    // Sieves are not used above this weight: girdles chip. Source read: a published sieve chart.
    private const double MeleeCt = 0.20;

    // Common practice: 3 to 5 % spare of melee; one more in a line of larger stones, which 2 % rounded up is to 50 of them.
    private const decimal MeleeSparePercent = 4, LargeSparePercent = 2;

    private const int CaratDecimals = 4;

    /// <summary>The order for a design.</summary>
    /// <exception cref="ArgumentException">The design was refused.</exception>
    public static StoneOrder Of(LineDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (design is not { Chosen: { } chosen, Spec: { } spec, Hinge: { } hinge })
        {
            throw new ArgumentException($"the design was refused: {design.Refusal}", nameof(design));
        }

        var brief = design.Brief;
        var stone = spec.Stone;
        var d = stone.DiameterMm;
        var seat = Deviations * brief.Process.ToleranceMm;
        var (larger, reason) = Larger(spec, hinge, LinkForm.Derive(spec, hinge, chosen.PitchMm), seat);
        double smallest = d - Math.Max(0, 2 * (spec.SeatFraction - ShallowestSeat) * spec.ClawMm - seat), largest = d + larger;
        var each = decimal.Round((decimal)stone.WeightCt(brief.Species.SpecificGravity), CaratDecimals, MidpointRounding.AwayFromZero);
        var isMelee = (double)each <= MeleeCt;
        var percent = isMelee ? MeleeSparePercent : LargeSparePercent;
        var spares = (int)Math.Ceiling(chosen.Count * percent / 100);
        var (sieve, note) = SieveOf(brief.Species, d, smallest, largest, isMelee);
        var deepest = stone.PavilionDepthMm + Math.Max(0, hinge.CuletMm - LeastCuletMm);
        return new StoneOrder(
            "round", brief.Species.Key, OriginOf(brief.Species), d, smallest, largest, stone.DepthMm, deepest, reason, sieve, note,
            chosen.Count, percent, spares, chosen.Count + spares, each, chosen.Count * each, (chosen.Count + spares) * each,
            Words(brief.Species, stone, chosen.Count + spares, smallest, largest, deepest), Marks.CommonPractice);
    }

    /// <summary>natural, laboratory-grown or manufactured.</summary>
    public static string OriginOf(Species species)
    {
        ArgumentNullException.ThrowIfNull(species);
        return species.Key.StartsWith("laboratory-grown", StringComparison.Ordinal) ? "laboratory-grown"
            : species.Disclosure.Contains("simulant", StringComparison.Ordinal) ? "manufactured"
            : "natural";
    }

    // How much larger a stone may be, and what stops it first.
    private static (double Mm, string Reason) Larger(LineSpec spec, HingeForm hinge, LinkForm link, double seat)
    {
        var stone = spec.Stone;
        var over = link.GirdleHeightMm + stone.GirdleHalfMm - hinge.HeightMm;
        var spare = (link.PitchMm - stone.DiameterMm) / 2 - over * Math.Tan(link.OutwardHalf) - hinge.PlayMm;
        var slope = double.DegreesToRadians(stone.Proportions.PavilionDeg);
        (double Mm, string Reason)[] bounds =
        [
            (2 * (DeepestSeat - spec.SeatFraction) * spec.ClawMm - seat, "half of each claw must stand behind its bearing, with two standard deviations of the casting"),
            (2 * spare - LeastGapMm, "neighbouring girdles must stay apart when the line is bent back to its stops"),
            (2 * (LinkForm.RailStoneClearMm - LeastRailMm) / Math.Sin(slope), "the pavilion must stay clear of the upper rail"),
            ((hinge.CuletMm - LeastCuletMm) / stone.Proportions.PavilionDepthRatio, "the culet must stay clear of the skin"),
        ];
        var (mm, reason) = bounds.MinBy(bound => bound.Mm);
        return (Math.Max(0, mm), reason);
    }

    private static (string? Sieve, string Note) SieveOf(Species species, double d, double smallest, double largest, bool isMelee)
    {
        if (species.Key is not ("diamond" or "laboratory-grown-diamond"))
        {
            return (null, "sold by the gauge, each stone measured; sieve plates are a diamond dealer's");
        }

        if (!isMelee)
        {
            return (null, "sold by the gauge: above about 0.20 ct sieves chip girdles");
        }

        // The lot that has most of what the seats take, not the one that happens to begin at the size.
        double Shared(SieveSize row) => Math.Min(row.HighMm, largest) - Math.Max(row.LowMm, smallest);
        var lot = MaterialTables.Sieves.All.MaxBy(Shared)!;
        if (Shared(lot) < 0)
        {
            return (null, string.Create(CultureInfo.InvariantCulture, $"no sieve of the table holds {d:0.00} mm; sold by the gauge"));
        }

        var (low, high) = (Math.Max(lot.LowMm, smallest), Math.Min(lot.HighMm, largest));
        return (lot.Key, low == lot.LowMm && high == lot.HighMm
            ? string.Create(CultureInfo.InvariantCulture, $"the whole lot of {lot.LowMm:0.00} to {lot.HighMm:0.00} mm fits the seats")
            : string.Create(CultureInfo.InvariantCulture, $"the lot runs from {lot.LowMm:0.00} to {lot.HighMm:0.00} mm: have it gauged, and take {Up(smallest):0.00} to {Down(largest):0.00} mm"));
    }

    private static List<string> Words(Species species, Stone stone, int count, double smallest, double largest, double deepest)
    {
        var proportions = stone.Proportions;
        var words = new List<string>
        {
            string.Create(CultureInfo.InvariantCulture, $"{count} round brilliants of {species.Name.ToLowerInvariant()}, {Up(smallest):0.00} to {Down(largest):0.00} mm, as one lot matched in colour and make."),
            string.Create(CultureInfo.InvariantCulture, $"Near table {proportions.TableRatio * 100:0.#} %, crown {proportions.CrownDeg:0.#} and pavilion {proportions.PavilionDeg:0.##} degrees; girdle to culet no more than {Down(deepest):0.00} mm; girdles neither chipped nor thicker than 6 % of the diameter."),
            OriginOf(species) switch
            {
                // Standard: ISO 18323, nomenclature of diamonds and laboratory-grown diamonds. From memory.
                "laboratory-grown" => "Laboratory-grown: these words stand in full on offer, invoice and label, never diamond alone. State the way of growth and any treatment after it.",
                "manufactured" => "Manufactured, a simulant: name the material on offer, invoice and label.",
                _ when species.Key == "diamond" => "Natural diamond, screened for laboratory-grown stones lot by lot, with the supplier's written statement of natural and conflict-free source.",
                _ => "Natural stones, not synthetic, tested lot by lot, with the supplier's written statement of origin and treatment.",
            },
        };
        if (species.Disclosure.Length > 0)
        {
            var what = species.Disclosure.StartsWith("Say ", StringComparison.Ordinal) ? species.Disclosure[4..] : species.Disclosure;
            words.Add($"To be stated in writing, for the lot or stone by stone: {what}");
        }

        return words;
    }

    /// <summary>The smallest stone to a hundredth of a millimetre, as gauges read, and to the side that fits.</summary>
    internal static double Up(double mm) => Math.Ceiling(mm * 100 - 1e-6) / 100;

    /// <summary>The largest likewise.</summary>
    internal static double Down(double mm) => Math.Floor(mm * 100 + 1e-6) / 100;
}
