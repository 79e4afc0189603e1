using Linewright.Assembly;
using Linewright.Casting;
using Linewright.Files;
using Linewright.Making;
using Linewright.Solids.Space;

namespace Linewright.Delivery;

/// <summary>Writes the files of a made piece: patterns, parts list, plates of patterns, assemblies.</summary>
/// <remarks>Where they go is the caller's business: a folder on disk, an archive. Files are opened one after the other, each closed before the next.</remarks>
public static class PieceFiles
{
    // Patterns are laid out side by side, this far apart and in rows of this width, so that none touches another.
    private const double ApartMm = 2, RowMm = 100;

    // Stones in the display file: clear, a little blue in the shade. Assumed.
    private const double StoneTint = 0.97;

    /// <summary>Writes everything but report.json.</summary>
    /// <param name="made">The piece.</param>
    /// <param name="casting">Its patterns with their sprues, meshed.</param>
    /// <param name="create">Opens a new file for writing by its path in the folder, with /.</param>
    /// <param name="stage">Told what is being written.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The writing was asked to stop.</exception>
    public static void Write(MadePiece made, CastingPatterns casting, Func<string, Stream> create, IProgress<string> stage, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(create);
        ArgumentNullException.ThrowIfNull(stage);
        var report = Reports.Of(made);
        foreach (var pattern in made.Patterns)
        {
            stop.ThrowIfCancellationRequested();
            using var file = create(pattern.File);
            StlWriter.Write(file, pattern.Mesh, pattern.Part.Name);
        }

        using (var file = create("parts.csv"))
        {
            CsvWriter.Write(
                file,
                ["part", "file", "count", "cast", "volume_mm3", "area_mm2", "triangles", "finished_mm3", "mass_g", "cast_g"],
                report.Parts.Select(part => (IReadOnlyList<CsvCell>)
                [
                    part.Name, part.File, part.Count, part.IsCast ? "cast" : "drawn wire", Rounded(part.VolumeMm3), Rounded(part.AreaMm2),
                    part.Triangles, Rounded(part.FinishedMm3), Rounded(part.MassG), Rounded(part.CastG),
                ]));
        }

        using (var file = create("stones.csv"))
        {
            QuoteFiles.WriteOrder(StoneOrders.Of(made.Model.Piece.Design), file);
        }

        stage.Report("Writing the patterns");
        stop.ThrowIfCancellationRequested();
        using (var file = create("piece.3mf"))
        {
            ThreeMfWriter.Write(file, PatternScene(made));
        }

        stage.Report("Writing the plate");
        CastingFiles.Write(casting, create, stop);
        stage.Report("Writing the assembly");

        // Both files show the same metal: it is felt once.
        var shading = made.Model.Piece.Parts.Select((part, index) => CreasedNormals.Of(made.Model.AsSet[index].Mesh, part.AsSet)).ToList();
        foreach (var (name, assembly) in new[] { ("piece.glb", made.Model.Closed), ("piece-flat.glb", made.Model.Flat) })
        {
            stop.ThrowIfCancellationRequested();
            using var file = create(name);
            GlbWriter.Write(file, WornScene(made.Model, assembly, shading));
        }
    }

    private static FileScene PatternScene(MadePiece made)
    {
        var material = MetalOf(made.Model);
        double x = 0, y = 0, rowDepth = 0;
        var parts = made.Patterns.Select(pattern =>
        {
            var box = pattern.Mesh.Bounds;
            var places = Enumerable.Range(0, pattern.Part.Count).Select(_ =>
            {
                if (x > 0 && x + box.Size.X > RowMm)
                {
                    (x, y, rowDepth) = (0, y + rowDepth + ApartMm, 0);
                }

                var place = Pose.Move(x - box.Low.X, y - box.Low.Y, -box.Low.Z);
                x += box.Size.X + ApartMm;
                rowDepth = Math.Max(rowDepth, box.Size.Y);
                return place;
            }).ToList();
            return new MeshPart(pattern.Part.Name, pattern.Mesh, places, material)
            {
                PartNumber = pattern.Part.IsCast ? pattern.Part.Name : pattern.Part.Name + ", drawn wire, not to be cast",
            };
        }).ToList();
        return new FileScene(made.Model.Piece.Design.Brief.Name, parts);
    }

    private static FileScene WornScene(PieceModel model, LineAssembly assembly, List<CreasedNormals> shading)
    {
        var metal = MetalOf(model);
        var brief = model.Piece.Design.Brief;
        var parts = model.Piece.Parts
            .Select((part, index) => new MeshPart(part.Name, model.AsSet[index].Mesh, assembly.Of(part.Role), metal) { Shading = shading[index] })
            .ToList();
        var species = brief.Species;
        var clear = new FileMaterial(
            species.Key, StoneTint, StoneTint, 1, 0, 0, (species.RefractiveIndexLow + species.RefractiveIndexHigh) / 2);
        parts.Add(new MeshPart("stone", model.Piece.Stone.Body.ToMesh(), assembly.Stones, clear) { Faceted = true });
        return new FileScene(brief.Name, parts);
    }

    private static FileMaterial MetalOf(PieceModel model)
    {
        var alloy = model.Piece.Design.Brief.Alloy;

        // A hand polish is no mirror. Assumed: what reads as polished under soft light.
        return new FileMaterial(alloy.Key, alloy.Colour.Red, alloy.Colour.Green, alloy.Colour.Blue, 1, 0.16);
    }

    // As the report rounds: to a millionth.
    private static double Rounded(double value) => Math.Round(value, 6, MidpointRounding.ToEven);
}
