using Linewright.Assembly;
using Linewright.Layout;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The clasp as a thing to wear: its size, its flat underside on a curved wrist, its safety.</summary>
internal sealed class ClaspCheck : ICheck
{
    private static readonly CheckRule Size = new("clasp-size", "mm", "box clasps are 8 to 16 long, 1.2 to 1.5 of the line's width and 2.5 to 3.5 high", Marks.CommonPractice);
    private static readonly CheckRule Underside = new("clasp-underside", "mm", "sagitta of a straight underside on the wrist: c2 / 8 r; under 0.8 is not felt", Marks.Assumed);
    private static readonly CheckRule Safety = new("safety", "mm", "the loop must snap over its ball: 0.03 to 0.15 smaller on the diameter", Marks.CommonPractice);
    private static readonly CheckRule Room = new("safety-room", "mm", "the safety must turn without scraping the box", Marks.Assumed);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop)
    {
        var (piece, clasp) = (model.Piece, model.Piece.Clasp);
        var box = piece[PartRole.Box].AsSet;
        yield return Size.Between("clasp, hinge axis to hinge axis", clasp.LengthMm, ClaspRange.UsualLowMm, ClaspRange.UsualHighMm, ClaspRange.LowMm, ClaspRange.HighMm, "choose another layout, or set clasp.length_max_mm");

        var middle = new Vec3((clasp.CavityMm + clasp.MouthMm) / 2, 0, clasp.WallMm / 2);
        var width = Caliper.Across(box, middle, Vec3.UnitY);
        var line = piece.Link.WidthMm;
        yield return Size.Between(
            FormattableString.Invariant($"clasp, across; the line is {line:0.0} wide"), width, 1.2 * line, 1.5 * line, line, 3 * line, "set clasp.width_ratio between 1.2 and 1.5; a tongue needs a box of 4 mm, so a narrow line has a wide clasp");

        var corner = new Vec3(middle.X, 0.45 * clasp.WidthMm - 0.3, clasp.HeightMm + 1);
        var height = corner.Z - Caliper.ToSurface(box, corner, -Vec3.UnitZ);
        yield return Size.Between("clasp, height", height, 2.5, 3.5, 2, 5, "lower clasp.wall_mm, clasp.press_mm or clasp.tongue_mm for a lower box");

        yield return OnWrist(piece);
        foreach (var finding in SafetyOf(piece, model))
        {
            stop.ThrowIfCancellationRequested();
            yield return finding;
        }
    }

    /// <summary>The line's fit on the brief's wrist, or round where the line is too short for that form.</summary>
    internal static WristFit? FitOf(Piece piece)
    {
        var wrist = piece.Design.Brief.Wrist;
        return WristFit.Solve(piece.Layout.Chain, wrist.DepthRatio, wrist.Exponent).Fit ?? WristFit.Solve(piece.Layout.Chain, 1, 2).Fit;
    }

    private static Finding OnWrist(Piece piece) => FitOf(piece) is { } fit
        ? Underside.AtMost("clasp on the wrist", fit.ClaspSagittaMm, 0.8, 2, "hollow the underside to the wrist, or choose a shorter clasp")
        : Underside.Note(Verdict.Fail, "the line does not close round any wrist", "a longer line");

    /// <summary>The safety of a piece, felt with the meshes of its model.</summary>
    internal static IEnumerable<Finding> SafetyOf(Piece piece, PieceModel model)
    {
        var clasp = piece.Clasp;
        if (piece.Find(PartRole.Safety) is not { } part)
        {
            yield return Safety.Note(Verdict.Caution, "no safety", "set clasp.safety: a second lock holds when the tongue tires");
            yield break;
        }

        // The ball: the widest place of the post, looked for from its outer end inwards.
        var (x, z) = (SafetyBuilder.BoxPostX(clasp), clasp.HeightMm / 2);
        var outside = new Vec3(x, clasp.WidthMm + 5, z);
        var end = outside.Y - Caliper.ToSurface(piece[PartRole.Box].AsSet, outside, -Vec3.UnitY);
        var ball = 0.0;
        for (var y = end - 0.02; y > end - 1; y -= 0.02)
        {
            ball = Math.Max(ball, Caliper.Across(piece[PartRole.Box].AsSet, new Vec3(x, y, z), Vec3.UnitX));
        }

        // The loop: the narrowest way across its middle, in its own plane.
        var (loop, centre) = (double.PositiveInfinity, new Vec3(x, (part.AsSet.Bounds.Low.Y + part.AsSet.Bounds.High.Y) / 2, z));
        for (var turn = 0; turn < 24; turn++)
        {
            var (sin, cos) = Math.SinCos(Math.PI * turn / 24);
            loop = Math.Min(loop, Caliper.Across(part.AsSet, centre, new Vec3(cos, 0, sin)));
        }

        yield return Safety.Between(
            FormattableString.Invariant($"loop of {loop:0.00} over a ball of {ball:0.00}"), ball - loop, 0.03, 0.15, 0.0, 0.3, "work the loop or the ball until it snaps");

        var body = model.BodyOf(PartRole.Safety);
        var near = Clearance.Between(
            [model.BodyOf(PartRole.Box, p => p.Y > 0), model.BodyOf(PartRole.Tongue, p => p.Y > 0 && p.X > clasp.CarrierMm - 0.5)], Pose.Identity, [body], Pose.Identity, 2);
        yield return Room.AtLeast(FormattableString.Invariant($"safety to {near.NameA}"), near.GapMm, 0.08, 0.02, "stand the safety further off the clasp's side");
    }
}
