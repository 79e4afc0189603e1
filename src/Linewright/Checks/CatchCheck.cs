using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The catch behind its lip: it must hold at rest, let go when pressed, and slide in between.</summary>
/// <remarks>
/// The pressed tongue is a solid of its own with the upper leaf bent down by the press; pulled out step by step, its
/// smallest gap to the box is measured. Elastic contact on the way is not modelled: a tongue that clears needs none.
/// </remarks>
internal sealed class CatchCheck : ICheck
{
    private const double StepMm = 0.3, PullMm = 0.3, ProbeMm = 0.1;

    // Less than this and polish or a speck of dirt closes it. Assumed.
    internal const double LeastGapMm = 0.01;

    // Less than this and a pull slips the catch past its lip. Assumed: half of what is common practice.
    internal const double LeastOverlapMm = 0.2;

    private static readonly CheckRule Overlap = new("catch-overlap", "mm", "0.4 to 0.8 of the catch stand behind the lip; from 0.35 with a safety", Marks.CommonPractice);
    private static readonly CheckRule Slide = new("tongue-slide", "mm", "0.05 to 0.10 a side, 0.15 at the sides; less jams with dirt", Marks.CommonPractice);
    private static readonly CheckRule Release = new("catch-release", "mm", "pressed, the tongue must come out without touching", Marks.Calculated);
    private static readonly CheckRule Holds = new("catch-holds", "mm", "pulled at rest, the catch must meet the lip", Marks.Calculated);
    private static readonly CheckRule Proud = new("push-stands-proud", "mm", "the push must be pressed all the way before a thumb meets the roof", Marks.Calculated);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var (piece, clasp) = (model.Piece, model.Piece.Clasp);
        var (box, tongue) = (piece[PartRole.Box].AsSet, piece[PartRole.Tongue].AsSet);
        var side = ShoulderY(clasp);

        var overlap = BehindLip(clasp, box, tongue, side);
        yield return Overlap.Between(
            "catch", overlap, 0.35, 0.8, LeastOverlapMm, 1.0, FormattableString.Invariant($"set clasp.press_mm to {clasp.PressMm + 0.45 - overlap:0.00}: the catch overlaps by what the press frees, less 0.10"));

        foreach (var (where, gap) in Slides(clasp, box, tongue))
        {
            yield return Slide.Between(where, gap, 0.03, 0.15, 0.01, 0.25, "set clasp.side_play_mm between 0.05 and 0.15 and keep the strip to its thickness");
        }

        var boxBody = model.BodyOf(PartRole.Box, p => p.X > clasp.CavityMm);
        stop.ThrowIfCancellationRequested();
        yield return Released(piece, boxBody, clasp.PressMm, stop);
        yield return Held(model, boxBody);

        var top = PushTop(clasp, tongue) - clasp.HeightMm;
        yield return Proud.AtLeast("push over the roof", top, clasp.PressMm - 0.005, clasp.PressMm - 0.1, "let the push stand higher over the roof than clasp.press_mm");
    }

    /// <summary>Across the line, the middle of the shoulder that stands beside the push.</summary>
    internal static double ShoulderY(ClaspForm clasp) => (clasp.CutOutMm / 2 + clasp.StripWidthMm / 2) / 2;

    /// <summary>Height of the catch's upper face less that of the lip's lower edge.</summary>
    internal static double BehindLip(ClaspForm clasp, Solid box, Solid tongue, double y)
    {
        var middle = clasp.LowerLeafMm + clasp.StripMm + clasp.LeafGapMm / 2;
        var under = new Vec3(clasp.MouthMm - clasp.LipMm / 2, y, middle);
        var lip = under.Z + Caliper.ToSurface(box, under, Vec3.UnitZ);
        var over = new Vec3(clasp.CatchMm - 0.05, y, clasp.RoofMm - 0.005);
        return over.Z - Caliper.ToSurface(tongue, over, -Vec3.UnitZ) - lip;
    }

    /// <summary>Gaps of the strip in the box, at the sides, under and over it.</summary>
    internal static IEnumerable<(string Where, double Gap)> Slides(ClaspForm clasp, Solid box, Solid tongue)
    {
        double x = (clasp.FoldMm + clasp.CatchMm) / 2, z = clasp.LowerLeafMm + clasp.StripMm / 2, floor = (clasp.WallMm + clasp.LowerLeafMm) / 2;
        double Free(Vec3 from, Vec3 way) => Caliper.ToSurface(box, from, way) - Caliper.ToSurface(tongue, from, way);
        yield return ("strip to side wall", Free(new Vec3(x, 0, z), Vec3.UnitY));
        yield return ("strip to floor", Caliper.ToSurface(box, new Vec3(x, 0, floor), -Vec3.UnitZ) + Caliper.ToSurface(tongue, new Vec3(x, 0, floor), Vec3.UnitZ));
        var over = new Vec3(clasp.CatchMm - 0.05, ShoulderY(clasp), clasp.RoofMm - 0.005);
        yield return ("catch to roof", Caliper.ToSurface(box, over, Vec3.UnitZ) + Caliper.ToSurface(tongue, over, -Vec3.UnitZ));
    }

    /// <summary>Pulls the pressed tongue out, step by step.</summary>
    internal static Finding Released(Piece piece, Body box, double press, CancellationToken stop)
    {
        var clasp = piece.Clasp;
        var strip = new TongueBuilder(piece.Design.Spec!, piece.Link, clasp).Strip(press);
        var mesh = Mesher.Run(strip, MeshSettings.Preview, threads: 1, stop: stop).Mesh;
        var body = new Body("tongue", strip, ProbeSurface.Of(strip, mesh, ProbeMm));
        var (least, at) = (double.PositiveInfinity, 0.0);
        for (var pull = 0.0; pull < clasp.MouthMm - clasp.FoldMm; pull += StepMm)
        {
            stop.ThrowIfCancellationRequested();
            var gap = Clearance.Between([box], Pose.Identity, [body], Pose.Move(pull, 0, 0), 1).GapMm;
            (least, at) = gap < least ? (gap, pull) : (least, at);
        }

        return Release.AtLeast(
            FormattableString.Invariant($"tongue pressed by {press:0.00}, closest {at:0.0} mm out"), least, LeastGapMm, 0, "raise clasp.press_mm, or a higher box: the fold and the pressed leaf must pass under the lip");
    }

    private static Finding Held(PieceModel model, Body box)
    {
        var clasp = model.Piece.Clasp;
        var body = model.BodyOf(PartRole.Tongue, p => p.X < clasp.CarrierMm);
        var gap = Clearance.Between([box], Pose.Identity, [body], Pose.Move(PullMm, 0, 0), 1).GapMm;
        var holds = gap <= 0;
        return Holds.Says(
            holds ? Verdict.Pass : Verdict.Fail, FormattableString.Invariant($"tongue pulled {PullMm:0.0} mm at rest"), gap, 0, holds ? "" : "raise clasp.press_mm: the catch does not reach behind the lip");
    }

    private static double PushTop(ClaspForm clasp, Solid tongue)
    {
        var over = new Vec3(clasp.CatchMm - clasp.PushMm / 2, 0, clasp.HeightMm + 5);
        return over.Z - Caliper.ToSurface(tongue, over, -Vec3.UnitZ);
    }
}
