using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Materials;
using Linewright.Solids.Meshing;

namespace Linewright.Casting;

/// <summary>What the rules of spruing do not know, and where they found no answer, in sentences.</summary>
internal static class CastingNotes
{
    // A ratio that misses by rounding is not missed.
    private const double Hair = 0.005;

    /// <summary>The notes of one plan; what concerns this piece first.</summary>
    public static IReadOnlyList<string> For(ResolvedBrief brief, ImmutableArray<SpruedPart> parts, double stemMm, ImmutableArray<int> tooLarge, bool hasPins)
    {
        var notes = new List<string>();
        for (var i = 0; i < parts.Length; i++)
        {
            var (part, name) = (parts[i], parts[i].Part.Name);
            if (part.Site is null)
            {
                notes.Add($"{name}: no polished face is wide enough for a sprue clear of bearings, bores, bars and the catch; sprue it by hand: the metal to weigh out holds the part and not its sprue");
            }
            else if (part.FeedRatio < Modulus.FeedRatio - Hair)
            {
                notes.Add(FormattableString.Invariant(
                    $"{name}: the gate of {part.FedMm:0.00} freezes before the part ({part.FeedRatio:0.00} of its modulus, {Modulus.FeedRatio:0.0} wanted); give it a second sprue"));
            }
            else if (part.FedMm < part.ThickestMm)
            {
                notes.Add(FormattableString.Invariant(
                    $"{name}: the widest gate on a polished face meets {part.FedMm:0.00} of it, the thickest section {part.ThickestMm:0.00}; the part as a whole is fed, that section may draw a little"));
            }
        }

        var thickest = parts.Max(part => part.SprueMm);
        if (stemMm < Modulus.FeedRatio * thickest - Hair)
        {
            notes.Add(FormattableString.Invariant(
                $"a stem of {stemMm:0.00} freezes before the thickest sprue, {thickest:0.00}; raise process.stem_mm to {Math.Ceiling(100 * Modulus.FeedRatio * thickest) / 100:0.00}"));
        }

        foreach (var index in tooLarge)
        {
            var size = parts[index].UprightBox.Size;
            notes.Add(FormattableString.Invariant(
                $"{parts[index].Part.Name}: {size.X:0.0} x {size.Y:0.0} x {size.Z:0.0} with its sprue does not stand on the plate; raise process.plate_x_mm, plate_y_mm or plate_z_mm"));
        }

        if (brief.Alloy.Family is MetalFamily.Platinum or MetalFamily.Palladium)
        {
            notes.Add("platinum and palladium fill badly and freeze fast: take shorter and thicker sprues than the rule, and an investment bonded with phosphate");
        }

        if (hasPins)
        {
            notes.Add("drawn pins are not cast and stand on no plate");
        }

        notes.Add("supports are the printer's: parts stand on their sprues, overhangs are not propped");
        notes.Add("the rule compares moduli of whole bodies: it knows no hot corner, no turbulence, no gas, no rise of the metal, no temperature of flask or melt; a caster's eye goes before it");
        notes.Add("gates are cut and filed flush before tumbling; the stub's foot stands on the stem and is joined there with wax");
        notes.Add("melting loss, and the fresh metal that an alloy asks for among returns, are not in the weight");
        return notes;
    }

    /// <summary>Which patterns could not be meshed as finely as asked.</summary>
    public static IEnumerable<string> OfMeshes(ImmutableArray<SpruedPart> parts, ImmutableArray<MeshOutcome> meshes)
        => parts.Zip(meshes).Where(pair => pair.Second.Status != MeshStatus.Meshed)
            .Select(pair => $"{pair.First.Part.Name}: part and sprue could not be meshed as finely as asked ({pair.Second.Status})");
}
