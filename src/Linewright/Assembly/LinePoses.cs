using System.Collections.Immutable;
using Linewright.Layout;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>The poses in which a piece is pictured, each one that the metal can take: rigid pieces, hinges within their freedom, on the ground.</summary>
/// <remarks>The play is shared out evenly wherever a line is laid by hand; only the flat line is pulled taut.</remarks>
public static class LinePoses
{
    // Laid by hand a line is not forced to its limits.
    private const double Ease = 0.92;

    // A bend of an S turns no further than this: more, and it curls back on itself.
    private const double MostBend = 110 * Math.PI / 180;

    // The halves of an open clasp: mouth and fold so far apart, each turned towards the viewer. Chosen by eye.
    private const double ApartMm = 3.4, NearerMm = 1.2, ClaspTurn = 20 * Math.PI / 180;

    /// <summary>Pulled taut, straight, clasp closed.</summary>
    public static RestingLine Flat(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var places = FlatFit.Solve(piece.Layout.Chain).Placements;
        var pieces = places.Select(place => place.IsClasp
            ? new RestingPiece(RestingKind.Clasp, 0, Pose.Move(-piece.Clasp.LengthMm / 2, 0, 0).Then(place.Pose))
            : new RestingPiece(RestingKind.Link, place.Index, place.Pose));
        return new RestingLine("flat", [new RestingChain([.. pieces], false)], null, double.PositiveInfinity);
    }

    /// <summary>One link on its skin side.</summary>
    public static RestingLine Link()
        => new("link", [new RestingChain([new RestingPiece(RestingKind.Link, 0, Pose.Identity)], false)], null, double.PositiveInfinity);

    /// <summary>Open, laid along an S as tight as the sideways flex allows and no tighter than looks well, clasp open at its ends.</summary>
    public static RestingLine Draped(Piece piece, JointFreedom freedom)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(freedom);
        var chain = Shared(piece);
        var limit = Ease * freedom.Sideways;
        var radius = CurveFit.SmallestRadius(chain with { ClaspMm = chain.PitchMm }, limit);
        while (true)
        {
            var curve = DrapeCurve.Points(chain.Count * chain.PitchMm, radius, 2, MostBend, chain.ClaspMm + 1);
            if (CurveFit.Solve(chain, curve, limit) is { Fits: true } fit)
            {
                return new RestingLine("draped", [Opened(piece, fit.Fit.Placements)], SafetyOn(piece, BoxOf(piece, fit.Fit.Placements)), radius);
            }

            // The clasp is longer than a link: where it meets the last bend the line wants a little more room.
            radius *= 1.02;
        }
    }

    /// <summary>The clasp open, tongue drawn out, its fold beside the box's mouth; on either side half of the links, in a bend away from the viewer.</summary>
    /// <remarks>Where the two halves of the line meet is outside of any picture made of this, and is not built.</remarks>
    public static RestingLine Clasp(Piece piece, JointFreedom freedom)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(freedom);
        var clasp = piece.Clasp;

        // Mouth and fold side by side in the middle, nearest to the viewer; both halves run away from there.
        Vec3 mouth = new(clasp.MouthMm, 0, 0), fold = new(clasp.FoldMm, 0, 0);
        var box = Pose.Move(-mouth).Then(Pose.Turn(Vec3.UnitZ, -ClaspTurn)).Then(Pose.Move(-ApartMm / 2, 0, 0));
        var tongue = Pose.Move(-fold).Then(Pose.Turn(Vec3.UnitZ, ClaspTurn)).Then(Pose.Move(ApartMm / 2, -NearerMm, 0));
        var turn = Ease * freedom.Sideways;
        var half = piece.Layout.Count / 2;

        // From the box backwards, from the tongue onwards; both turn the same way, towards the back.
        var links = ImmutableArray.CreateBuilder<RestingPiece>();
        var next = (Pose: box, Bar: RestingChain.BarCentre(piece, RestingKind.Box));
        for (var i = 0; i < half; i++)
        {
            var hinge = next.Pose.Point(next.Bar);
            var frame = Pose.Turn(Vec3.UnitZ, -turn * Math.Min(1, (i + 1) / 4.0)).Then(next.Pose with { Origin = Vec3.Zero });
            var pose = frame with { Origin = hinge - frame.Direction(piece.Link.EyeCentre) };
            links.Add(new RestingPiece(RestingKind.Link, piece.Layout.Count - 1 - i, pose));
            next = (pose, piece.Link.BarAxis);
        }

        links.Reverse();
        links.Add(new RestingPiece(RestingKind.Box, 0, box));
        var others = ImmutableArray.CreateBuilder<RestingPiece>();
        others.Add(new RestingPiece(RestingKind.Tongue, 0, tongue));
        var before = (Pose: tongue, Eye: RestingChain.EyeCentre(piece, RestingKind.Tongue));
        for (var i = 0; i < half; i++)
        {
            var hinge = before.Pose.Point(before.Eye);
            var frame = Pose.Turn(Vec3.UnitZ, turn * Math.Min(1, (i + 1) / 4.0)).Then(before.Pose with { Origin = Vec3.Zero });
            var pose = frame with { Origin = hinge - frame.Direction(piece.Link.BarAxis) };
            others.Add(new RestingPiece(RestingKind.Link, i, pose));
            before = (pose, piece.Link.EyeCentre);
        }

        return new RestingLine(
            "clasp",
            [new RestingChain(links.ToImmutable(), false), new RestingChain(others.ToImmutable(), false)],
            SafetyOn(piece, box),
            piece.Layout.PitchMm / turn);
    }

    /// <summary>Closed and laid on its side in the form of the wrist, then let down until it rests.</summary>
    /// <param name="model">The piece with its meshes.</param>
    /// <param name="freedom">How its neighbours may lie.</param>
    /// <param name="settled">What the settling took and gave.</param>
    /// <param name="stop">Asks to stop.</param>
    public static RestingLine Closed(PieceModel model, JointFreedom freedom, out SettleResult settled, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(freedom);
        var start = OnItsSide(model, out var bodies);
        ImmutableArray<RestBody> each = [.. start.Pieces.Select(at => at.Kind == RestingKind.Link ? bodies.Link : bodies.Clasp)];
        settled = Settling.Run(each, [.. start.Joints(model.Piece, freedom)], [.. start.Pieces.Select(at => at.Pose)], stop: stop);
        var poses = settled.Poses;
        return new RestingLine(
            "closed",
            [start with { Pieces = [.. start.Pieces.Select((at, i) => at with { Pose = poses[i] })] }],
            null,
            double.PositiveInfinity);
    }

    /// <summary>The worn form laid over, its safety upwards, a hair over the ground.</summary>
    private static RestingChain OnItsSide(PieceModel model, out LineBodies bodies)
    {
        const double hairMm = 0.01;
        var piece = model.Piece;
        var wrist = piece.Design.Brief.Wrist;
        var fit = WristFit.Solve(Shared(piece), wrist.DepthRatio, wrist.Exponent);
        fit = fit.Fits ? fit : WristFit.Solve(Shared(piece), 1, 2);
        var places = fit.Fits ? fit.Fit.Placements : throw new ArgumentException($"the line does not close: {fit.Reason}", nameof(model));
        var chain = new RestingChain(
            [.. places.Select(place => place.IsClasp ? new RestingPiece(RestingKind.Clasp, 0, ClaspAt(piece, place)) : LinkAt(piece, place))], true);
        bodies = LineBodies.Of(model);

        // Round the x axis y becomes up: the side without the safety lies on the ground, x keeps across the picture.
        var over = Pose.Turn(Vec3.UnitX, Math.PI / 2);
        ImmutableArray<RestingPiece> laid = [.. chain.Pieces.Select(at => at with { Pose = at.Pose.Then(over) })];
        var lowest = double.PositiveInfinity;
        foreach (var at in laid)
        {
            lowest = Math.Min(lowest, (at.Kind == RestingKind.Link ? bodies.Link : bodies.Clasp).LowestMm(at.Pose));
        }

        return chain with { Pieces = [.. laid.Select(at => at with { Pose = at.Pose.Then(Pose.Move(0, 0, hairMm - lowest)) })] };
    }

    private static HingeChain Shared(Piece piece)
    {
        var chain = piece.Layout.Chain;
        return chain with { PitchMm = chain.PitchMm - piece.Hinge.PlayMm, ClaspMm = chain.ClaspMm - piece.Hinge.PlayMm };
    }

    /// <summary>The tongue before the first link, in line with it; the box after the last.</summary>
    private static RestingChain Opened(Piece piece, ImmutableArray<LinkPlacement> places)
    {
        var first = LinkAt(piece, places[0]).Pose;
        var hinge = first.Point(piece.Link.BarAxis);
        var tongue = first with { Origin = hinge - first.Direction(RestingChain.EyeCentre(piece, RestingKind.Tongue)) };
        var links = places.Where(place => !place.IsClasp).Select(place => LinkAt(piece, place));
        return new RestingChain([new RestingPiece(RestingKind.Tongue, 0, tongue), .. links, new RestingPiece(RestingKind.Box, 0, BoxOf(piece, places))], false);
    }

    private static Pose BoxOf(Piece piece, ImmutableArray<LinkPlacement> places) => ClaspAt(piece, places.First(place => place.IsClasp));

    // Layouts place a piece by the middle between its hinge points; shared out, an eye's middle is half a play nearer than the bar it holds when taut.
    private static RestingPiece LinkAt(Piece piece, LinkPlacement place)
    {
        var middle = (piece.Link.BarAxis + piece.Link.EyeCentre) * 0.5;
        return new RestingPiece(RestingKind.Link, place.Index, Pose.Move(-middle.X, 0, 0).Then(place.Pose));
    }

    private static Pose ClaspAt(Piece piece, LinkPlacement place)
        => Pose.Move(-RestingChain.EyeCentre(piece, RestingKind.Clasp).X / 2, 0, 0).Then(place.Pose);

    /// <summary>The safety on the box's post, swung down until it touches the ground.</summary>
    private static Pose? SafetyOn(Piece piece, Pose box)
    {
        if (piece.Find(PartRole.Safety) is null)
        {
            return null;
        }

        return Pose.TurnAbout(SafetyBuilder.BoxPost(piece.Clasp), Vec3.UnitY, SafetyBuilder.FallAngle(piece.Clasp)).Then(box);
    }
}
