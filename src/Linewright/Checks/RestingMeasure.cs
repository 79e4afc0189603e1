using Linewright.Assembly;
using Linewright.Parts;
using Linewright.Solids.Measures;

namespace Linewright.Checks;

/// <summary>A resting line measured on its solids and meshes: how true its pose is.</summary>
/// <param name="DeepestMm">The lowest vertex of all meshes over the ground; below 0 something is sunk.</param>
/// <param name="HighestFootMm">Of all pieces' lowest vertices the highest: what floats most, or hangs from its neighbours.</param>
/// <param name="LeastGapMm">The smallest gap between neighbours; below 0 they overlap.</param>
/// <param name="Where">Which neighbours, and what of them.</param>
public sealed record RestingMeasure(double DeepestMm, double HighestFootMm, double LeastGapMm, string Where)
{
    // Gaps beyond this do not interest.
    private const double NearMm = 0.5;

    /// <summary>Measures a pose.</summary>
    public static RestingMeasure Of(PieceModel model, RestingLine line)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(line);
        var bodies = LineBodies.Of(model);
        double deepest = double.PositiveInfinity, highest = double.NegativeInfinity;
        foreach (var at in line.Pieces)
        {
            var foot = bodies.Of(at.Kind).LowestMm(at.Pose);
            (deepest, highest) = (Math.Min(deepest, foot), Math.Max(highest, foot));
        }

        if (line.Safety is { } hangs)
        {
            deepest = Math.Min(deepest, model.MeshOf(PartRole.Safety).Mesh.Moved(hangs).Bounds.Low.Z);
        }

        Body[] link = [.. model.LinkBodies], box = [], tongue = [];
        if (line.Pieces.Any(at => at.Kind != RestingKind.Link))
        {
            var reach = 1.3 * model.Piece.Layout.PitchMm;
            box = [model.BodyOf(PartRole.Box, p => p.X < reach)];
            tongue = [model.BodyOf(PartRole.Tongue, p => p.X > model.Piece.Clasp.LengthMm - reach)];
        }

        Body[] BodiesOf(RestingKind kind) => kind switch
        {
            RestingKind.Link => link,
            RestingKind.Clasp => [.. box, .. tongue],
            RestingKind.Box => box,
            _ => tongue,
        };
        var pairs = line.Chains.SelectMany(chain => chain.Neighbours().Select(pair => (Eye: chain.Pieces[pair.Eye], Bar: chain.Pieces[pair.Bar]))).ToList();
        var gaps = new ClearanceResult[pairs.Count];
        Parallel.For(0, pairs.Count, i => gaps[i] = Clearance.Between(
            BodiesOf(pairs[i].Eye.Kind), pairs[i].Eye.Pose, BodiesOf(pairs[i].Bar.Kind), pairs[i].Bar.Pose, NearMm));
        if (gaps.Length == 0)
        {
            return new RestingMeasure(deepest, highest, double.PositiveInfinity, "");
        }

        // An open safety reaches towards the tongue.
        if (line.Safety is { } safety && line.Pieces.FirstOrDefault(at => at.Kind == RestingKind.Tongue) is { } opposite)
        {
            var gap = Clearance.Between([model.BodyOf(PartRole.Safety)], safety, [model.BodyOf(PartRole.Tongue)], opposite.Pose, NearMm);
            if (gap.GapMm < gaps.Min(other => other.GapMm))
            {
                return new RestingMeasure(deepest, highest, gap.GapMm, "safety to tongue");
            }
        }

        var least = Enumerable.Range(0, gaps.Length).MinBy(i => gaps[i].GapMm);
        var (eye, bar) = pairs[least];
        return new RestingMeasure(deepest, highest, gaps[least].GapMm, FormattableString.Invariant(
            $"{gaps[least].NameA} of {eye.Kind} {eye.Index} to {gaps[least].NameB} of {bar.Kind} {bar.Index}"));
    }
}
