using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;

namespace Linewright.Checks;

/// <summary>The thinnest wall of every feature of every cast part, by the largest ball that fits inside; and how many pieces keep them all.</summary>
internal sealed class WallCheck : ICheck
{
    /// <summary>The name of the rule.</summary>
    internal const string Rule = "smallest-wall";

    // Walls well over every limit need not be measured out.
    private const double LookTo = 1.15;

    private static readonly CheckRule Cast = new(
        "walls-after-casting", "%",
        "99 of 100 pieces have no wall further under its least than castings of grade DCTG 4 may be: half of 0.26 up to 10 mm, ISO 8062-3:2007, table 2; limits are for drawings",
        Marks.Assumed);

    /// <inheritdoc/>
    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var findings = Walls(model, stop).ToList();
        return [.. findings, .. AfterCasting(model.Piece, findings)];
    }

    /// <summary>How likely it is that no wall comes out of the casting too thin; nothing where a part has no surface.</summary>
    private static IEnumerable<Finding> AfterCasting(Parts.Piece piece, List<Finding> findings)
    {
        var walls = WallReading.AsCast(WallReading.Of(piece, findings));
        if (walls.IsEmpty || findings.Any(finding => finding.Measured is null))
        {
            yield break;
        }

        var (brief, scatter) = (piece.Design.Brief, WallScatter.Of(piece.Design.Brief, piece.Layout.Count));
        double shortfall = brief.Process.WallShortfallMm, keeps = scatter.NoneUnder(walls, shortfall);
        var worst = walls.MinBy(wall => (wall.ThicknessMm - wall.LimitMm) / scatter.OwnMm(wall))!;
        yield return Cast.AtLeast(
            FormattableString.Invariant($"pieces whose walls are all let pass, up to {shortfall:0.00} short as cast; nearest is {worst.Part}: {worst.Feature}, {worst.ThicknessMm:0.000} drawn for {worst.LimitMm:0.000}, scatter {scatter.OwnMm(worst):0.000}"),
            100 * keeps,
            100 * WallScatter.Wanted,
            0,
            scatter.ReserveMm(walls, shortfall, brief.Process.WallReserveMm) is { } reserve
                ? FormattableString.Invariant($"set process.wall_reserve_mm to {reserve:0.00##}, or gauge the castings and sort them")
                : "lower process.tolerance_mm by a finer route, or gauge the castings and sort them");
    }

    private static IEnumerable<Finding> Walls(PieceModel model, CancellationToken stop)
    {
        foreach (var part in model.Piece.Parts)
        {
            stop.ThrowIfCancellationRequested();
            if (!part.IsCast || part.Features.IsEmpty)
            {
                continue;
            }

            if (model.MeshOf(part.Role) is { Status: not MeshStatus.Meshed } or { Mesh.TriangleCount: 0 })
            {
                yield return new Finding(
                    Rule, Verdict.Fail, $"{part.Name}: no surface to measure", null, null, "mm",
                    "what has no surface cannot be cast", Marks.Calculated, "ask for a larger process.mesh_deviation_um");
                continue;
            }

            var most = LookTo * part.Features.Max(feature => feature.WallLimitMm) + model.Piece.Design.Brief.Process.WallReserveMm;
            var mesh = model.MeshOf(part.Role).Mesh;
            var thinnest = WallMeasure.ThinnestByLabel(part.AsSet, mesh, most, p => FeatureNames.IndexAt(part, p));
            for (var i = 0; i < part.Features.Length; i++)
            {
                yield return Judge(part, i, thinnest.TryGetValue(i, out var wall) ? wall : null, most);
            }
        }
    }

    private static Finding Judge(Parts.Part part, int index, WallSample? wall, double most)
    {
        var feature = part.Features[index];

        // Where nothing thinner was met the wall is at least what was looked to.
        var measured = wall?.ThicknessMm ?? most;
        var isThick = measured >= feature.WallLimitMm;
        return new Finding(
            Rule,
            isThick ? Verdict.Pass : Verdict.Fail,
            wall is { } at ? FeatureNames.Place(part, index, at.At) : FormattableString.Invariant($"{part.Name}: {feature.Name}, nowhere thinner than {most:0.00}"),
            measured, feature.WallLimitMm, "mm",
            feature.Source,
            Marks.CommonPractice,
            isThick ? "" : Cure(feature.Name))
        {
            Spots = wall is { } spot ? [new Spot(part.Role, spot.At)] : [],
        };
    }

    private static string Cure(string feature) => feature switch
    {
        "base rail" => "raise link.rail_mm, or lower link.opening_percent",
        "eye" => "raise hinge.eye_wall_mm",
        "cheek" => "raise hinge.cheek_mm",
        "bar" => "raise hinge.bar_mm",
        "claw heel" => "raise setting.claw_mm, or lower setting.seat_fraction",
        "claw tip" => "raise setting.claw_mm",
        "box wall" or "lip" or "carrier" => "raise clasp.wall_mm",
        "tongue strip" => "raise clasp.tongue_mm",
        _ => "raise link.stone_gap_mm, or choose a metal that casts thinner",
    };
}
