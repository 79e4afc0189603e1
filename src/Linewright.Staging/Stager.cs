using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Pictures.Scenes;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Staging;

/// <summary>Front door: a piece at rest becomes a scene with camera, light and ground.</summary>
public sealed class Stager
{
    // So many links beside the clasp belong to its picture; the rest runs out of the frame.
    private const int LinksBesideClasp = 2;

    // A warm grey card beside which white metal looks white, light enough for a soft shadow to read. Chosen by eye.
    private const double GreyPaper = 0.47;

    // Angles of a turntable at which the frame is fitted; between two of them less than the margin stands out.
    private const int TurnsLooked = 24;

    private readonly PieceModel model;
    private readonly RestingLine line;
    private readonly SceneKind scene;
    private readonly LineBodies bodies;
    private readonly ImmutableArray<Mesh> shapes;

    /// <summary>Prepares a pose for pictures.</summary>
    /// <param name="model">The piece with its meshes.</param>
    /// <param name="scene">What is to be shown.</param>
    /// <param name="line">Its pose, of <see cref="Poses"/>.</param>
    public Stager(PieceModel model, SceneKind scene, RestingLine line)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(line);
        (this.model, this.scene, this.line) = (model, scene, line);
        bodies = LineBodies.Of(model);
        shapes = [.. model.AsSet.Select(outcome => outcome.Mesh)];
    }

    /// <summary>Sets camera, light and ground.</summary>
    public StagedScene Stage(StageOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var seen = line.Pieces.Where(IsInPicture).SelectMany(at => bodies.Of(at.Kind).Corners.Select(at.Pose.Point)).ToList();
        var middle = Middle(seen);
        Pose Turned(double angle) => Pose.TurnAbout(middle, Vec3.UnitZ, angle);
        var turn = Turned(options.Turn);
        IReadOnlyCollection<Vec3> framed = options.IsTurntable
            ? [.. Enumerable.Range(0, TurnsLooked).SelectMany(i => seen.Select(Turned(i * 2 * Math.PI / TurnsLooked).Point))]
            : [.. seen.Select(turn.Point)];
        var view = View.Of(scene).Best(framed, options.Size);
        var eye = Framing.Eye(framed, view, options.Size);
        var (sharp, stone) = Sharp(eye, view, options, turn);
        var lens = Framing.Lens(eye, view, options.Size, sharp);
        var (lights, around) = LightRig.Of(
            middle, seen.Max(point => (point - middle).Length), view.Forward, IsWarm(model.Piece.Design.Brief.Alloy), !options.IsTransparent);
        return new StagedScene(
            new Scene(lens, shapes, Metals(turn), [model.Piece.Stone.Body], Stones(turn), GroundOf(options), lights, around),
            stone,
            2 * lens.FocalDistance * Framing.Tangents(options.Size).Down / options.Size.Height);
    }

    /// <summary>Yellow and rose metals throw back much less blue than red.</summary>
    private static bool IsWarm(Alloy alloy) => alloy.Colour.Blue < 0.7 * alloy.Colour.Red;

    private static Vec3 Middle(List<Vec3> points)
    {
        Vec3 low = points.Aggregate((a, b) => a.Min(b)), high = points.Aggregate((a, b) => a.Max(b));
        return (low + high) * 0.5;
    }

    private bool IsInPicture(RestingPiece at)
    {
        var count = model.Piece.Layout.Count;
        return scene != SceneKind.Clasp || at.Kind != RestingKind.Link || at.Index < LinksBesideClasp || at.Index >= count - LinksBesideClasp;
    }

    /// <summary>The stone asked for, else the one that stands best for its picture: near, towards the middle, its table to the camera.</summary>
    private (Vec3 At, int Number) Sharp(Vec3 eye, View view, StageOptions options, Pose turn)
    {
        var links = line.Pieces.Where(at => at.Kind == RestingKind.Link).ToList();
        Vec3 Table(RestingPiece at) => at.Pose.Then(turn).Point(new Vec3(0, 0, model.Piece.Link.TableHeightMm));
        double Standing(RestingPiece at)
        {
            var (x, y, away) = Framing.Project(Table(at), eye, view, options.Size);
            var towards = -at.Pose.Then(turn).AxisZ.Dot(view.Forward);
            var off = scene == SceneKind.Draped ? Math.Abs(x + 0.2) : Math.Abs(x);
            return towards - 1.2 * off - 0.25 * Math.Abs(y) - 8 * away / (eye.Length + 1);
        }

        var best = options.FocusStone is { } number
            ? links.FirstOrDefault(at => at.Index == number - 1) ?? links.MaxBy(Standing)!
            : links.MaxBy(Standing)!;
        return (Table(best), best.Index + 1);
    }

    private ImmutableArray<MetalInstance> Metals(Pose turn)
    {
        var brief = model.Piece.Design.Brief;
        var finishes = model.Piece.Parts.Select(part => MetalLook.Of(brief, part.Role)).ToList();
        return [.. line.Parts(model.Piece).Parts.Select(placed =>
        {
            var shape = model.Piece.Parts.IndexOf(model.Piece[placed.Role]);
            return new MetalInstance(shape, placed.Pose.Then(turn), finishes[shape]);
        })];
    }

    private ImmutableArray<StoneInstance> Stones(Pose turn)
    {
        var material = StoneMaterial.Named(model.Piece.Design.Brief.Species.Key);
        return [.. line.Parts(model.Piece).Stones.Select(pose => new StoneInstance(0, pose.Then(turn), material))];
    }

    private Ground GroundOf(StageOptions options)
    {
        var kind = options.Ground switch
        {
            StageGround.Paper => GroundKind.Paper,
            StageGround.Stone => GroundKind.Stone,
            StageGround.Cloth => GroundKind.Cloth,
            StageGround.Clay => GroundKind.Clay,
            _ => GroundKind.Plain,
        };
        var ground = Ground.Of(kind, 0) with { Transparent = options.IsTransparent };

        // White metal mirrors its paper: a grey one leaves it its edges, a white one would wash them out.
        return kind == GroundKind.Paper && !IsWarm(model.Piece.Design.Brief.Alloy)
            ? ground with { Red = GreyPaper, Green = GreyPaper * 1.005, Blue = GreyPaper * 0.92 }
            : ground;
    }
}
