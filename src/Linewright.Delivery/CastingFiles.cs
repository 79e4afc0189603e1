using Linewright.Casting;
using Linewright.Files;

namespace Linewright.Delivery;

/// <summary>Writes what the printer and the caster get: a 3MF a plate, and the trees as a table.</summary>
public static class CastingFiles
{
    /// <summary>Writes plate.3mf, plate-2.3mf and so on, and tree.csv.</summary>
    /// <param name="patterns">The planned patterns, meshed.</param>
    /// <param name="create">Opens a new file for writing by its path in the folder, with /.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="OperationCanceledException">The writing was asked to stop.</exception>
    public static void Write(CastingPatterns patterns, Func<string, Stream> create, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(patterns);
        ArgumentNullException.ThrowIfNull(create);
        var plan = patterns.Plan;
        for (var index = 0; index < plan.Plates.Length; index++)
        {
            stop.ThrowIfCancellationRequested();
            using var file = create(CastingPlans.FileOf(index));
            ThreeMfWriter.Write(file, PlateScene(patterns, index));
        }

        using var table = create("tree.csv");
        CsvWriter.Write(
            table,
            ["tree", "ring", "part", "count", "height_mm", "first_deg", "every_deg"],
            plan.Trees.SelectMany((tree, number) => tree.Rings.Select((ring, rank) => (IReadOnlyList<CsvCell>)
            [
                number + 1, rank + 1, ring.Part, ring.Count, Rounded(ring.HeightMm), Rounded(ring.FirstDeg), Rounded(ring.EveryDeg),
            ])));
    }

    private static FileScene PlateScene(CastingPatterns patterns, int index)
    {
        var (plan, name) = (patterns.Plan, patterns.Plan.Piece.Design.Brief.Name);
        // Patterns are resin or wax. Assumed: the amber of castable resin.
        var resin = new FileMaterial("pattern", 0.8, 0.45, 0.1, 0, 0.5);
        var parts = plan.Plates[index].Places
            .GroupBy(place => place.Part)
            .Select(group => new MeshPart(
                plan.Parts[group.Key].Part.Name, patterns.Meshes[group.Key], [.. group.Select(place => place.Pose)], resin)
            {
                PartNumber = plan.Parts[group.Key].Part.Name + (plan.Parts[group.Key].Site is null ? ", without sprue" : ", with sprue"),
            })
            .ToList();
        return new FileScene(
            plan.Plates.Length == 1 ? $"{name}, plate" : FormattableString.Invariant($"{name}, plate {index + 1} of {plan.Plates.Length}"),
            parts);
    }

    // As the report rounds: to a millionth.
    private static double Rounded(double value) => Math.Round(value, 6, MidpointRounding.ToEven);
}
