using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Materials;
using Linewright.Parts;

namespace Linewright.Checks;

/// <summary>What the alloy means for skin, assay, casting and the tongue. By composition; nothing here replaces an assay or a test.</summary>
internal sealed class MetalCheck : ICheck
{
    // Source: ISO 9202, fineness of precious metal alloys, list from memory. 333 is national only.
    private static readonly Dictionary<MetalFamily, double[]> Standard = new()
    {
        [MetalFamily.Gold] = [375, 585, 750, 916, 990, 999],
        [MetalFamily.Silver] = [800, 830, 925, 958, 999],
        [MetalFamily.Platinum] = [850, 900, 950, 999],
        [MetalFamily.Palladium] = [500, 950, 999],
    };

    private static readonly CheckRule Fineness = new("fineness", "", "ISO 9202: parts per thousand by mass, least values", Marks.FromMemory);
    private static readonly CheckRule Nickel = new(
        "nickel-release", "%", "REACH (EC) 1907/2006, Annex XVII entry 27: at most 0.5 micrograms per cm2 and week on skin, tested by EN 1811", Marks.SourceRead);

    private static readonly CheckRule Cadmium = new("cadmium-lead", "%", "REACH (EC) 1907/2006, Annex XVII entry 23: cadmium in a metal part", Marks.SourceRead);
    private static readonly CheckRule Lead = new("cadmium-lead", "%", "REACH (EC) 1907/2006, Annex XVII entry 63: lead in any part", Marks.SourceRead);
    private static readonly CheckRule Tongue = new("tongue-temper", "", "a casting and a soldered strip are near annealed; only cold work makes a spring", Marks.CommonPractice);
    private static readonly CheckRule Plate = new("rhodium", "um", "0.3 to 0.5 lasts on a bracelet, 0.75 to 1.0 may crack", Marks.CommonPractice);
    private static readonly CheckRule Casting = new("casting-metal", "", "investment and melt by metal", Marks.CommonPractice);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop) => Of(model.Piece);

    /// <summary>The findings, from the alloy and the tongue's solid.</summary>
    internal static IEnumerable<Finding> Of(Piece piece)
    {
        var brief = piece.Design.Brief;
        var alloy = brief.Alloy;
        yield return OfFineness(alloy);

        var nickel = alloy.NickelPercent;
        yield return Nickel.Says(
            nickel > 0 ? Verdict.Caution : Verdict.Pass,
            nickel > 0 ? "nickel in the alloy" : "no nickel in the alloy",
            nickel,
            null,
            nickel > 0
                ? "have the piece tested for release; rhodium over nickel must hold for two years and wears off at the clasp first: white gold with palladium needs none"
                : "");
        yield return Cadmium.AtMost(
            "cadmium in the alloy; solders and findings count too", alloy.CadmiumPercent, SkinContactLimits.CadmiumPercent, SkinContactLimits.CadmiumPercent, "another alloy");
        yield return Lead.AtMost(
            "lead in the alloy; solders and findings count too", alloy.LeadPercent, SkinContactLimits.LeadPercent, SkinContactLimits.LeadPercent, "another alloy");

        yield return OfTongue(piece);
        if (alloy.Key.Contains("white", StringComparison.Ordinal) || brief.Finish.RhodiumUm > 0)
        {
            yield return OfPlate(brief);
        }

        if (CastingNote(alloy.Family) is { Length: > 0 } note)
        {
            yield return Casting.Note(Verdict.Caution, alloy.Name, note);
        }
    }

    private static Finding OfFineness(Alloy alloy)
    {
        if (!Standard.TryGetValue(alloy.Family, out var standard))
        {
            return Fineness.Note(Verdict.Caution, $"{alloy.Name}: no precious metal", "for samples only: it must not be sold as precious metal");
        }

        var isListed = standard.Contains(alloy.FinenessPerMille);
        return Fineness.Says(
            isListed ? Verdict.Pass : Verdict.Caution,
            FormattableString.Invariant($"nominal {alloy.FinenessPerMille:0} per thousand, to be assayed; solder and findings count"),
            alloy.FinenessPerMille,
            standard.MinBy(value => Math.Abs(value - alloy.FinenessPerMille)),
            isListed ? "" : "a fineness known in some countries only: ask the assay office where it will be sold");
    }

    private static Finding OfTongue(Piece piece)
    {
        var (brief, alloy) = (piece.Design.Brief, piece.Design.Brief.Alloy);
        var (thickness, length, _) = TongueCheck.Leaf(piece);
        var strain = TongueSpring.Strain(thickness, piece.Clasp.PressMm, length);
        var soft = TongueSpring.EnduringStrain(alloy.YieldMPa(Temper.Annealed), alloy.ModulusMPa);
        return strain <= soft
            ? Tongue.Note(Verdict.Pass, "the tongue lasts even annealed", "")
            : Tongue.Note(
                brief.Clasp.Temper == Temper.Hard ? Verdict.Caution : Verdict.Fail,
                brief.Clasp.Temper == Temper.Hard ? "the tongue counts as hard" : "the tongue is annealed",
                "roll the strip hard by 60 % or more, weld it to its carrier by laser and do not heat it again; a cast or soldered tongue tires");
    }

    private static Finding OfPlate(ResolvedBrief brief) => brief.Finish.RhodiumUm switch
    {
        <= 0 => Plate.Says(Verdict.Pass, "white gold unplated keeps its own grey white", 0, null, ""),
        var um => Plate.Between("rhodium plate", um, 0.3, 0.75, 0.05, 1.5, "set finish.rhodium_um between 0.3 and 0.5; tell the wearer that it wears off at edges and clasp"),
    };

    private static string CastingNote(MetalFamily family) => family switch
    {
        MetalFamily.Platinum => "cast in phosphate-bonded investment and a furnace for platinum; gypsum breaks down",
        MetalFamily.Palladium => "melt under inert gas and cast in phosphate-bonded investment; palladium takes up gas, gypsum breaks down",
        _ => "",
    };
}
