using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Front door of the room: sprues the cast parts of a piece, nests them on plates and hangs them on trees.</summary>
public static class CastingPlans
{
    // A stem thinner than this bends in the hand. Assumed; a full flask takes 6 to 8.
    private const double LeastStemMm = 4;

    // What finishing takes where a brief says that it takes nothing, only to tell faces apart. Common practice: 0.10 a polished face.
    private const double UsualLossMm = 0.10;

    /// <summary>Plans the casting.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="asCast">The meshes of its parts as cast, before they are enlarged, in the order of the parts.</param>
    /// <param name="stop">Asks to stop.</param>
    public static CastingPlan Of(Piece piece, ImmutableArray<MeshOutcome> asCast, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (asCast.Length != piece.Parts.Length)
        {
            throw new ArgumentException($"{piece.Parts.Length} parts, {asCast.Length} meshes", nameof(asCast));
        }

        var brief = piece.Design.Brief;
        var process = brief.Process;
        var cast = Enumerable.Range(0, piece.Parts.Length)
            .Where(index => piece.Parts[index].IsCast && asCast[index].Mesh.TriangleCount > 0).ToList();
        var faces = FacesOf(piece, asCast, stop);
        var planned = new SpruedPart[cast.Count];
        Parallel.For(0, cast.Count, new ParallelOptions { CancellationToken = stop }, i
            => planned[i] = SprueRule.Of(piece.Parts[cast[i]], asCast[cast[i]].Mesh, brief, faces[cast[i]], stop));

        var meshes = PartMeshes.Run([.. planned.Select(part => part.Solid)], process.MeshDeviationUm / 1000, null, stop, [.. planned.Select(part => part.Part.AsCast)]);
        ImmutableArray<SpruedPart> parts = [.. planned.Zip(meshes, (part, mesh) => Enlarged(part, mesh, asCast[piece.Parts.IndexOf(part.Part)].Mesh, brief.Chain.PatternScale))];
        var (plates, tooLarge) = PlateNesting.Of(parts, process.PlateXMm, process.PlateYMm, process.PlateZMm, process.PlateGapMm);
        var stem = process.StemMm ?? Math.Max(LeastStemMm, Modulus.FeedRatio * parts.Max(part => part.SprueMm));
        var trees = TreeBuilder.Of(parts, process.PartsPerTree, stem, process.PlateGapMm);
        return new CastingPlan { Parts = parts, Plates = plates, Trees = trees, Report = Report(brief, parts, plates, trees, tooLarge, meshes) };
    }

    /// <summary>Name of a plate's file: plate.3mf, then plate-2.3mf.</summary>
    /// <param name="index">From 0.</param>
    public static string FileOf(int index) => index == 0 ? "plate.3mf" : FormattableString.Invariant($"plate-{index + 1}.3mf");

    // A part as cast tells polished faces from kept ones by how far they stand out. Where nothing is lost none does: then the same piece is drawn
    // as if something were, and its faces are told by that.
    private static ImmutableArray<FaceSource> FacesOf(Piece piece, ImmutableArray<MeshOutcome> asCast, CancellationToken stop)
    {
        var allowance = piece.Design.Brief.Chain.AllowanceMm(FaceKind.Polished);
        if (allowance > 0)
        {
            return [.. piece.Parts.Zip(asCast, (part, outcome) => new FaceSource(part, outcome.Mesh, allowance, 0))];
        }

        var process = piece.Design.Brief.Process with { FinishLossMm = UsualLossMm };
        var drawn = PartsBuilder.Build(LineDesign.Solve(piece.Design.Brief with { Process = process }));
        var meshes = PartMeshes.Run([.. drawn.Parts.Select(part => part.AsCast)], Math.Min(process.MeshDeviationUm / 1000, UsualLossMm / 10), null, stop);
        return [.. drawn.Parts.Zip(meshes, (part, outcome) => new FaceSource(part, outcome.Mesh, UsualLossMm, UsualLossMm))];
    }

    private static SpruedPart Enlarged(SpruedPart part, MeshOutcome outcome, Mesh alone, double scale)
    {
        var mesh = outcome.Mesh.Scaled(scale);
        var upright = Pose.Identity;
        if (part.Site is { } site)
        {
            // The sprue's axis turned downwards, its foot into the origin.
            var foot = SprueRule.Along(site) with { Origin = (site.Point + site.Outward * part.LengthMm) * scale };
            upright = foot.Inverse().Then(Pose.Turn(Vec3.UnitX, Math.PI));
        }

        return part with
        {
            Mesh = mesh,
            CastMm3 = MassProperties.Of(outcome.Mesh).Volume,
            Upright = upright,
            UprightBox = mesh.Moved(upright).Bounds,
            PartBox = alone.Scaled(scale).Moved(upright).Bounds,
            SprueBox = Bounds.Around(part.SprueMm / 2 * scale, part.SprueMm / 2 * scale, 0) with { High = new Vec3(part.SprueMm / 2 * scale, part.SprueMm / 2 * scale, part.LengthMm * scale) },
        };
    }

    private static CastingReport Report(
        ResolvedBrief brief,
        ImmutableArray<SpruedPart> parts,
        ImmutableArray<PrintPlate> plates,
        ImmutableArray<CastingTree> trees,
        ImmutableArray<int> tooLarge,
        ImmutableArray<MeshOutcome> meshes)
    {
        var chain = brief.Chain;
        double G(double volume) => brief.Alloy.MassOf(volume).Value;
        var treeRows = trees.Select(tree =>
        {
            double hangs = tree.Places.Sum(place => parts[place.Part].PartMm3), all = tree.Places.Sum(place => parts[place.Part].CastMm3);
            return new TreeReport(
                tree.Places.Length, tree.Rings, tree.StemMm, tree.StemLengthMm, tree.ButtonMm, tree.HeightMm, tree.WidthMm,
                G(hangs), G(all - hangs), G(tree.StemMm3), G(tree.ButtonMm3), G(all + tree.StemMm3 + tree.ButtonMm3));
        }).ToList();
        var shrunk = chain.CastScale * chain.CastScale * chain.CastScale;
        return new CastingReport(
            chain.Route.Key,
            chain.PatternScale,
            chain.AllowanceMm(FaceKind.Polished),
            [.. chain.Steps.Select(step => new StepReport(
                step.Row.Key, step.Row.Name, 100 * (1 - step.Scale), step.PolishedLossMm, step.LossMm(FaceKind.Kept), step.Row.ScaleSpreadPercent,
                step.Row.FaceSpreadMm, step.Row.LossSpreadMm, step.Row.Source, step.Row.Mark))],
            [.. parts.Select(Sprue)],
            [.. plates.Select((plate, index) => Plate(plate, index, parts))],
            treeRows,
            treeRows.Sum(tree => tree.TotalG),
            G(parts.Sum(part => part.PartMm3 * part.Part.Count)) * (1 + brief.Process.TreePercent / 100),
            parts.Sum(part => part.CastMm3 * part.Part.Count) / shrunk * chain.PatternDensityGPerCm3 / 1000,
            brief.Alloy.DensityGPerCm3 / chain.PatternDensityGPerCm3 * shrunk,
            CastingNotes.For(brief, parts, tooLarge, meshes));
    }

    private static SprueReport Sprue(SpruedPart part) => new(
        part.Part.Name,
        part.Part.Count,
        part.Site is { } site ? [site.Point.X, site.Point.Y, site.Point.Z] : null,
        part.Site is { } way ? [way.Outward.X, way.Outward.Y, way.Outward.Z] : null,
        part.SprueMm,
        part.GateMm,
        part.LengthMm,
        part.ThickestMm,
        part.ModulusMm,
        part.FeedRatio,
        part.FeedRatio * part.FeedRatio);

    private static PlateReport Plate(PrintPlate plate, int index, ImmutableArray<SpruedPart> parts)
    {
        var box = Bounds.Empty;
        foreach (var (part, pose) in plate.Places)
        {
            box = box.Join(pose.Box(new Bounds(parts[part].Mesh.Bounds.Low, parts[part].Mesh.Bounds.High)));
        }

        return new PlateReport(FileOf(index), plate.Places.Length, box.High.X, box.High.Y, box.High.Z);
    }
}
