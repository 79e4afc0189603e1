using Linewright.Brief;
using Linewright.Materials;
using Linewright.Paper;

namespace Linewright.Checks;

/// <summary>What whoever makes, sells or wears the piece must be told. Short, in plain words; chosen by metal and stone.</summary>
/// <remarks>Common practice and the laws named; local law and a trained goldsmith's judgement come first.</remarks>
public static class Cautions
{
    // Below 36 months anything that fits a cylinder of 31.7 mm counts as swallowed. Source: 16 CFR 1501 and EN 71-1, from memory.
    private const string Children = "Not for children under 36 months: stones and links that come loose can be swallowed or breathed in.";

    private const string Law = "Licensed practice, hallmarking law and local codes come first; fineness here is nominal and says nothing until it is assayed.";
    private const string Wear = "Take it off for sport, sleep and work at machines; look once a year for worn claws, bars and tongue.";
    private const string Claws = "Claws that are filed or worn can scratch and catch: round every tip and try it on a stocking.";
    private const string Hot = "Molten metal on moisture explodes: dry crucible, flask and floor, shield, leather; keep clear of the steam when quenching.";
    private const string Dust = "Investment holds fine silica: wet it or wear a P3 mask. Uncured resin and its burn-out fumes, pickle and polishing dust need gloves and extraction.";
    private const string Solder = "No cadmium solder: its fumes kill, and above 0.01 % the piece may not be sold in the European Union. Lead is limited to 0.05 %.";

    /// <summary>Those that the wearer must know, in a fixed order: children, wear, nickel, plate.</summary>
    public static IReadOnlyList<string> ForWearer(ResolvedBrief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        var found = new List<string> { Children, Wear };
        AddSkin(brief, found);
        return found;
    }

    /// <summary>The cautions that apply to a brief, in a fixed order: wearer, metal, stone, bench, law, and letters of the name that no paper shows.</summary>
    public static IReadOnlyList<string> For(ResolvedBrief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        var (alloy, species) = (brief.Alloy, brief.Species);
        var found = new List<string> { Children, Wear, Claws };
        AddSkin(brief, found);
        found.Add($"{species.Name} at the bench: {Care(species)}");
        if (species.Disclosure.Length > 0)
        {
            found.Add($"{species.Name} in the shop: {species.Disclosure}");
        }

        found.Add(Hot);
        if (alloy.Family is MetalFamily.Platinum or MetalFamily.Palladium)
        {
            found.Add(FormattableString.Invariant(
                $"{alloy.Name} is cast near {alloy.MeltingHighC + 75:0} \u00b0C: phosphate-bonded investment, and eye shade 10 or darker against the glare."));
        }

        found.Add(Dust);
        found.Add(Solder);
        found.Add(Law);
        if (UnprintedLetters.Sentence("the piece's name", brief.Name) is { } letters)
        {
            found.Add(letters);
        }

        return found;
    }

    private static void AddSkin(ResolvedBrief brief, List<string> found)
    {
        var alloy = brief.Alloy;
        if (alloy.NickelPercent > 0)
        {
            found.Add(FormattableString.Invariant(
                $"{alloy.Name} has {alloy.NickelPercent:0.#} % nickel, which many people do not bear on the skin: test its release by EN 1811, at most {SkinContactLimits.NickelReleaseUgPerCm2Week:0.0} micrograms per cm2 and week."));
        }

        if (brief.Finish.RhodiumUm > 0)
        {
            found.Add("Rhodium wears off at edges and clasp within months to two years; what lies under it must suit the skin too.");
        }
    }

    // Some rows of the table only say "as" another.
    private static string Care(Species species)
    {
        if (!species.Care.StartsWith("As ", StringComparison.Ordinal))
        {
            return species.Care;
        }

        var key = species.Care[3..].TrimEnd('.');
        return MaterialTables.Species.TryFind(key, out var like) ? like.Care : species.Care;
    }
}
