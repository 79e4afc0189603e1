using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Linewright.Assembly;
using Linewright.Parts;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Two neighbouring links at their hinge, as bodies to feel with: the half of one that has the eye, the half of the next that has the bar.</summary>
/// <remarks>
/// The first link rests in its own frame; the next is placed against it. A shift of 0 is taut, one radial play shares
/// the play out evenly, two are slack. Only the halves that can meet carry probes: the far ends of two links never do.
/// </remarks>
internal sealed class Joint
{
    // A claw's diameter is some ten times this. 0.1 mm keeps a pose of two links under a millisecond.
    private const double SpacingMm = 0.1;

    // Slack, less a hair: a bar that touches its eye would count as the end of every turn.
    private const double HairMm = 0.003;

    private static readonly ConditionalWeakTable<PieceModel, Joint> Known = [];

    private readonly Piece piece;

    private Joint(PieceModel model)
    {
        piece = model.Piece;
        var stone = piece.Stone.Body.ToMesh().Moved(StonePose);
        EyeSide =
        [
            model.BodyOf(PartRole.Link, p => p.X > 0),
            new Body("stone", piece.SeatedStone, ProbeSurface.Of(piece.SeatedStone, stone, SpacingMm, p => p.X > 0)),
        ];
        ImmutableArray<Body> barSide =
        [
            model.BodyOf(PartRole.Link, p => p.X < 0),
            new Body("stone", piece.SeatedStone, ProbeSurface.Of(piece.SeatedStone, stone, SpacingMm, p => p.X < 0)),
        ];
        if (piece.Find(PartRole.Pin) is { } pin)
        {
            // The pin is held by the cheeks and turns with them.
            var at = Pose.Move(piece.Link.BarAxis);
            var solid = pin.AsSet.Moved(at);
            barSide = barSide.Add(new Body("pin", solid, ProbeSurface.Of(solid, model.MeshOf(PartRole.Pin).Mesh.Moved(at), SpacingMm)));
        }

        BarSide = barSide;
    }

    /// <summary>Metal and stone of the link that rests, probed on the side with its eye.</summary>
    public ImmutableArray<Body> EyeSide { get; }

    /// <summary>Metal and stone of the next link, probed on the side with its bar, and the pin where there is one.</summary>
    public ImmutableArray<Body> BarSide { get; }

    /// <summary>A stone's own frame in its link's.</summary>
    public Pose StonePose => Pose.Move(0, 0, piece.Link.GirdleHeightMm);

    /// <summary>How far the next link is pushed back where the play is shared out evenly, mm.</summary>
    public double SharedMm => piece.Hinge.PlayMm;

    /// <summary>How far the next link is pushed back where the line is slack, mm.</summary>
    public double SlackMm => 2 * piece.Hinge.PlayMm - HairMm;

    /// <summary>The joint of a piece's links; prepared once for each model.</summary>
    public static Joint Of(PieceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Known.GetValue(model, static m => new Joint(m));
    }

    /// <summary>The next link pushed back by a way, straight.</summary>
    public Pose Next(double backMm) => Pose.Move(piece.Link.PitchMm - backMm, 0, 0);

    /// <summary>The next link pushed back by a way, then turned about its own bar; above 0 towards the skin, radians.</summary>
    public Pose Next(double backMm, double inward)
        => Next(backMm).Then(Pose.TurnAbout(BarAxis(backMm), Vec3.UnitY, inward));

    /// <summary>Turns the next link about an axis through its bar until something meets.</summary>
    /// <param name="backMm">How far it is pushed back.</param>
    /// <param name="axis">y turns inwards, z sideways, x twists.</param>
    /// <param name="limit">Where to stop, radians; below 0 the other way.</param>
    public FirstContactResult Turn(double backMm, Vec3 axis, double limit)
        => FirstContact.Turning(EyeSide.AsSpan(), Pose.Identity, BarSide.AsSpan(), Next(backMm), BarAxis(backMm), axis, limit);

    /// <summary>Moves the next link from the evenly shared play until something meets, mm.</summary>
    /// <param name="direction">Unit direction.</param>
    /// <param name="most">Where to stop, mm.</param>
    public FirstContactResult Slide(Vec3 direction, double most)
        => FirstContact.Angle(
            EyeSide.AsSpan(), Pose.Identity, BarSide.AsSpan(), way => Pose.Move(direction * way).Then(Next(SharedMm)), most, reach: 1);

    /// <summary>What meets, in words: "stop of the link on stop of the next".</summary>
    /// <param name="pair">A pair found with the next link at <paramref name="next"/>.</param>
    /// <param name="next">Its pose.</param>
    public string Words(ClearanceResult pair, Pose next)
        => $"{Name(pair.NameA, pair.AtA)} of the link on {Name(pair.NameB, next.Inverse().Point(pair.AtB))} of the next";

    /// <summary>The same for a turn found by <see cref="Turn"/>.</summary>
    public string Words(FirstContactResult turn, double backMm, Vec3 axis)
        => Words(turn.Nearest, Next(backMm).Then(Pose.TurnAbout(BarAxis(backMm), axis, turn.NearestAngle)));

    /// <summary>Where a turn's pair lies, each point in its own link's frame.</summary>
    public ImmutableArray<Spot> Spots(FirstContactResult turn, double backMm, Vec3 axis)
    {
        if (!turn.Touches)
        {
            return [];
        }

        var next = Next(backMm).Then(Pose.TurnAbout(BarAxis(backMm), axis, turn.NearestAngle));
        return
        [
            new Spot(RoleOf(turn.Nearest.NameA), turn.Nearest.AtA, IsStone: turn.Nearest.NameA == "stone"),
            new Spot(RoleOf(turn.Nearest.NameB), InFrame(turn.Nearest.NameB, next.Inverse().Point(turn.Nearest.AtB)), IsNext: true, IsStone: turn.Nearest.NameB == "stone"),
        ];
    }

    private static PartRole RoleOf(string body) => body == "pin" ? PartRole.Pin : PartRole.Link;

    private Vec3 InFrame(string body, Vec3 at) => body == "pin" ? at - piece.Link.BarAxis : at;

    private Vec3 BarAxis(double backMm) => piece.Link.NextBarAxis - new Vec3(backMm, 0, 0);

    /// <summary>The link's feature at a point of its own frame.</summary>
    public string Feature(Vec3 at) => FeatureNames.At(piece[PartRole.Link], at);

    private string Name(string body, Vec3 at) => body == "link" ? Feature(at) : body;
}
