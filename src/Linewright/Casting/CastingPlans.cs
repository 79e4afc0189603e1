using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Front door of the room: sprues the cast parts of a piece, nests them on plates and hangs them on trees.</summary>
public static class CastingPlans
{
    // A stem thinner than this bends in the hand. Assumed; a full flask takes 6 to 8.
    private const double LeastStemMm = 4;

    /// <summary>Weighs every part and plans the casting.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="book">Solids measured and sprued before, which are looked up and not measured again; null where there are none.</param>
    /// <param name="threads">Solids to measure at a time; 0 for as many as there are processors.</param>
    /// <param name="stop">Asks to stop.</param>
    public static CastingPlan Of(Piece piece, VolumeBook? book = null, int threads = 0, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        var (process, parts) = (piece.Design.Brief.Process, piece.Parts);
        var finished = new double[parts.Length];
        var sprued = new SpruedPart?[parts.Length];
        var drawn = DrawnForFaces(piece);
        var way = new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = threads == 0 ? -1 : threads };
        Parallel.For(0, 2 * parts.Length, way, work =>
        {
            var (index, part) = (work / 2, parts[work / 2]);
            if (work % 2 == 0)
            {
                double Measure() => Weighing.VolumeMm3(part.AsSet, stop);
                finished[index] = book is null ? Measure() : book.Find(piece, part, Measure);
            }
            else if (part.IsCast)
            {
                SpruedPart? Sprue() => SprueRule.Of(part, drawn?.Parts[index], piece.Design.Brief, stop);
                sprued[index] = book is null ? Sprue() : book.FindSprued(piece, part, Sprue);
            }
        });

        ImmutableArray<SpruedPart> cast = [.. sprued.OfType<SpruedPart>()];
        var (plates, tooLarge) = PlateNesting.Of(cast, process.PlateXMm, process.PlateYMm, process.PlateZMm, process.PlateGapMm);
        var stem = process.StemMm ?? Math.Max(LeastStemMm, Modulus.FeedRatio * cast.Max(part => part.SprueMm));
        var trees = TreeBuilder.Of(cast, process.PartsPerTree, stem, process.PlateGapMm);
        var metal = trees.Sum(tree => tree.Places.Sum(place => cast[place.Part].CastMm3) + tree.StemMm3 + tree.ButtonMm3)
            + cast.Where(part => part.Site is null).Sum(part => part.CastMm3 * part.Part.Count);
        return new CastingPlan
        {
            Piece = piece,
            Weights = [.. parts.Select((part, index) => new WeighedPart(part, finished[index], sprued[index]?.PartMm3 ?? 0))],
            Parts = cast,
            Plates = plates,
            Trees = trees,
            MetalMm3 = metal,
            Report = Report(piece, cast, plates, trees, metal, stem, tooLarge),
        };
    }

    /// <summary>Meshes the sprued parts of a plan for the printer, as finely as the brief asks.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="stop">Asks to stop.</param>
    public static CastingPatterns Patterns(CastingPlan plan, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var brief = plan.Piece.Design.Brief;
        var outcomes = PartMeshes.Run(
            [.. plan.Parts.Select(part => part.Solid)], brief.Process.MeshDeviationUm / 1000, null, stop, [.. plan.Parts.Select(part => part.Part.AsCast)]);
        var scale = brief.Chain.PatternScale;
        return new CastingPatterns(
            plan,
            [.. outcomes.Select(outcome => outcome.Mesh.Scaled(scale))],
            plan.Report with { Notes = [.. CastingNotes.OfMeshes(plan.Parts, outcomes), .. plan.Report.Notes] });
    }

    /// <summary>Name of a plate's file: plate.3mf, then plate-2.3mf.</summary>
    /// <param name="index">From 0.</param>
    public static string FileOf(int index) => index == 0 ? "plate.3mf" : FormattableString.Invariant($"plate-{index + 1}.3mf");

    // A part as cast tells polished faces from kept ones by how far they stand out. Where nothing is lost none does: then the same piece is drawn
    // as if something were, and its faces are told by that.
    private static Piece? DrawnForFaces(Piece piece)
    {
        var brief = piece.Design.Brief;
        return brief.Chain.AllowanceMm(FaceKind.Polished) > 0
            ? null
            : PartsBuilder.Build(LineDesign.Solve(brief with { Process = brief.Process with { FinishLossMm = SprueRule.UsualLossMm } }));
    }

    private static CastingReport Report(
        Piece piece,
        ImmutableArray<SpruedPart> parts,
        ImmutableArray<PrintPlate> plates,
        ImmutableArray<CastingTree> trees,
        double metalMm3,
        double stemMm,
        ImmutableArray<int> tooLarge)
    {
        var (brief, chain) = (piece.Design.Brief, piece.Design.Brief.Chain);
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
            G(metalMm3),
            parts.Sum(part => part.CastMm3 * part.Part.Count) / shrunk * chain.PatternDensityGPerCm3 / 1000,
            brief.Alloy.DensityGPerCm3 / chain.PatternDensityGPerCm3 * shrunk,
            CastingNotes.For(brief, parts, stemMm, tooLarge, hasPins: piece.Find(PartRole.Pin) is not null));
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
            box = box.Join(parts[part].Upright.Inverse().Then(pose).Box(parts[part].UprightBox));
        }

        return new PlateReport(FileOf(index), plate.Places.Length, box.High.X, box.High.Y, box.High.Z);
    }
}
