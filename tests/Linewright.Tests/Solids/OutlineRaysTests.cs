using System.Text;
using Linewright.Parts;
using Linewright.Solids.Outlines;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using Linewright.Stones;
using Linewright.Tests.Core;

namespace Linewright.Tests.Solids;

/// <summary>Drawn lines judged by rays: what is drawn as seen is where the seen surface breaks off or turns, and no break is missing.</summary>
/// <remarks>
/// Rays know nothing of edges, contours or what hides what: they meet triangles. Where two rays side by side meet surfaces
/// whose depth jumps, a draughtsman has a line; where all rays round a place meet one smooth surface, none.
/// </remarks>
public class OutlineRaysTests
{
    // From ray to ray. Two of them are what the drawing promises: lift, same and straight of the fine settings together.
    private const double StepMm = 0.02;

    // How far a line may be from the break that it stands for: 0.012 lift, 0.02 where another line stands for it, 0.003 straight, a step of the rays.
    private const double NearMm = 0.06;

    // A break of less depth is a crease, for which no line is promised.
    private const double JumpMm = 0.1;

    // What the settings call a speck, twice, and a step at each end: a break this small may go without a line.
    private const double SpeckMm = 0.75;

    // An edge is drawn as far as its triangle goes, which is longer than the bend shows. Behind others a strip of triangles
    // thinner than the rays are apart makes an edge that they cannot meet: 0.35 mm of such is in the pinned link, 0.5 in the other.
    private const double RunOutMm = 0.2, HiddenRunOutMm = 0.55;

    private static readonly Lazy<RayBody[]> EyeOverBar = new(() => Link(4.0)), Pinned = new(() => Link(2.0));

    public static TheoryData<string> Scenes => ["pegs", "tube behind a ball", "crossed bars", "flush boxes", "stone", "plain stone", "tapered peg", "eye over bar", "pinned"];

    [Theory]
    [MemberData(nameof(Scenes))]
    public void Lines_are_where_rays_see_the_surface_break_and_nowhere_else(string name)
    {
        foreach (var eye in (Vec3[])[-Vec3.UnitY, Vec3.UnitZ, -Vec3.UnitX, new(1, -1, 1), new(0.3, -0.8, 0.5), new(-0.7, 0.2, 0.35), new(0.1, 0.6, -0.8)])
        {
            Assert.True(Faults(SceneOf(name), eye, null) is var faults && faults.Length == 0, faults);
        }
    }

    [Theory]
    [InlineData("tube behind a ball", 0.0)]
    [InlineData("tube behind a ball", 0.31)]
    [InlineData("flush boxes", 0.1)]
    [InlineData("stone", 0.2)]
    [InlineData("eye over bar", 0.0)]
    [InlineData("eye over bar", 0.43)]
    [InlineData("pinned", 0.0)]
    [InlineData("pinned", 0.43)]
    public void So_are_those_of_a_section(string name, double depth)
    {
        foreach (var eye in (Vec3[])[-Vec3.UnitY, new(0.77, -0.64, 0), new(0.3, -0.8, 0.5)])
        {
            Assert.True(Faults(SceneOf(name), eye, depth) is var faults && faults.Length == 0, faults);
        }
    }

    private static string Faults(RayBody[] bodies, Vec3 eye, double? cut)
    {
        var faults = new StringBuilder();
        var frame = ViewFrame.From(eye, Math.Abs(eye.Normalised().Z) > 0.99 ? Vec3.UnitY : Vec3.UnitZ);
        var settings = OutlineSettings.Fine with { WithHidden = cut is null, CutDepth = cut };
        var view = OutlineDrawer.Draw([.. bodies.Select((body, tag) => new PlacedBody(body.Drawn, body.Pose, tag))], frame, settings);
        var picture = new RayPicture(frame, bodies, cut ?? double.PositiveInfinity);
        foreach (var (line, at) in view.Lines.SelectMany(line => Unfounded(picture, line)))
        {
            faults.Append(FormattableString.Invariant($"\n{eye}: {(line.IsVisible ? "seen" : "hidden")} {line.Kind} of {line.Tag} at {at.X:0.000} {at.Y:0.000}, nothing there; rays meet {Met(picture, at)}"));
        }

        foreach (var (from, to, count) in Missing(picture, view))
        {
            faults.Append(FormattableString.Invariant($"\n{eye}: a break from {from.X:0.00} {from.Y:0.00} to {to.X:0.00} {to.Y:0.00}, {count} places, has no line"));
        }

        return faults.ToString();
    }

    private static string Met(RayPicture picture, FlatPoint at) => string.Join(" ", picture.Cast(at).Select(hit => FormattableString.Invariant($"{hit.Tag}:{hit.Depth:0.000}/{hit.Facing:0.00}")));

    private static RayBody[] SceneOf(string name) => name switch
    {
        "pegs" => [RayBody.Of(Solid.Union(Shape.Box(3, 1, 0.4), Peg(-1), Peg(-0.4), Peg(0.4), Peg(1)), 0.06)],
        "tube behind a ball" =>
        [
            RayBody.Of(Shape.Cylinder(0.7, 3).Minus(Shape.Cylinder(0.5, 4)), 0.08),
            RayBody.Of(Shape.Ball(0.6), 0.08) with { Pose = Pose.Move(0.5, -1.6, 0.4) },
        ],
        "crossed bars" =>
        [
            RayBody.Of(Shape.Capsule(new Vec3(-1.2, 0, 0), new Vec3(1.2, 0.2, 0.1), 0.3), 0.06),
            RayBody.Of(Shape.Capsule(new Vec3(0, -1.2, 0.65), new Vec3(0.1, 1.2, 0.62), 0.3), 0.06),
        ],
        "flush boxes" =>
        [
            RayBody.Of(Cuboid(1, 1, 1), OutlineBody.DefaultCrease),
            RayBody.Of(Cuboid(1, 1, 1), OutlineBody.DefaultCrease) with { Pose = Pose.Move(1, 0, 0) },
            RayBody.Of(Cuboid(0.6, 0.6, 1), OutlineBody.DefaultCrease) with { Pose = Pose.Move(0.2, 0, 1) },
        ],
        "stone" => [RayBody.Of(Stone, 2 * Math.PI / 180)],

        // Most of its edges bend by less than the crease: what the eye sees of them is its outline alone.
        "plain stone" => [RayBody.Of(Stone, 50 * Math.PI / 180)],

        // Walls that turn from the eye by a third of a degree.
        "tapered peg" => [RayBody.Of(Shape.TaperedCapsule(Vec3.Zero, 0.50, new Vec3(0, 0, 3), 0.48), 0.06)],
        "eye over bar" => EyeOverBar.Value,
        _ => Pinned.Value,
    };

    private static ConvexPolyhedron Stone => RoundBrilliant.Cut(3, BrilliantProportions.Modern).Stone!.Body;

    private static Solid Peg(double x) => Shape.Capsule(new Vec3(x, 0, 0), new Vec3(x, 0, 0.6), 0.12);

    private static ConvexPolyhedron Cuboid(double x, double y, double z) => ConvexPolyhedron.FromPlanes(
        [new(Vec3.UnitX, x / 2), new(-Vec3.UnitX, x / 2), new(Vec3.UnitY, y / 2), new(-Vec3.UnitY, y / 2), new(Vec3.UnitZ, z / 2), new(-Vec3.UnitZ, z / 2)]).Body!;

    // A link with its stone, as the sheet has it.
    private static RayBody[] Link(double diameter)
    {
        var piece = CheckedPieces.Piece(diameter, "gold-750-yellow");
        return
        [
            RayBody.Of(piece[PartRole.Link].AsSet, 0.05),
            RayBody.Of(piece.Stone.Body, 2 * Math.PI / 180) with { Pose = Pose.Move(0, 0, piece.Link.GirdleHeightMm) },
        ];
    }

    // Where a line runs on with nothing to stand for, for longer than a crease may take to run out into a round.
    private static IEnumerable<(OutlineLine Line, FlatPoint At)> Unfounded(RayPicture picture, OutlineLine line)
    {
        var (most, run) = (line.IsVisible ? RunOutMm : HiddenRunOutMm, 0.0);
        for (var i = 1; i < line.Points.Length; i++)
        {
            FlatPoint from = line.Points[i - 1], step = line.Points[i] - from;
            var count = (int)Math.Ceiling(step.Length / 0.05);
            for (var k = 0; k < count; k++)
            {
                var at = from + step * ((k + 0.5) / count);
                run = (line.IsVisible ? IsBreak(picture, at, 0) : IsBehind(picture, at)) ? 0 : run + step.Length / count;
                if (run > most)
                {
                    yield return (line, at);
                    run = 0;
                }
            }
        }
    }

    // Whether the surface that lies so many behind the first breaks off, belongs to another body or bends within reach of a place.
    private static bool IsBreak(RayPicture picture, FlatPoint at, int behind)
    {
        const int reach = 3;
        var hits = new List<RayPicture.Hit?>();
        for (var x = -reach; x <= reach; x++)
        {
            for (var y = -reach; y <= reach; y++)
            {
                var all = picture.Cast(new FlatPoint(at.X + (x + 0.013) * StepMm, at.Y + (y - 0.017) * StepMm));
                hits.Add(all.Count > behind ? all[behind] : null);
            }
        }

        // One smooth surface: all met, one body, normals within 6 degrees of each other, none along the view, and no jump.
        if (hits.Exists(hit => hit is null) || hits.Exists(hit => hit!.Value.Tag != hits[0]!.Value.Tag))
        {
            return hits.Exists(hit => hit is not null);
        }

        var normals = hits.Select(hit => hit!.Value.Normal).ToList();
        if (normals.Exists(one => one.Dot(normals[normals.Count / 2]) < Math.Cos(6 * Math.PI / 180)) || hits.Exists(hit => Math.Abs(hit!.Value.Facing) < 0.2))
        {
            return true;
        }

        var steepest = hits.Max(hit => Math.Sqrt(1 - Math.Min(1, hit!.Value.Facing * hit.Value.Facing)) / Math.Abs(hit.Value.Facing));
        return hits.Max(hit => hit!.Value.Depth) - hits.Min(hit => hit!.Value.Depth) > 2 * (1.5 * reach * StepMm * steepest) + 0.01;
    }

    // A hidden line: something stands before it, and some surface behind the first has a break there.
    private static bool IsBehind(RayPicture picture, FlatPoint at)
    {
        var most = 0;
        for (var i = -1; i <= 1; i++)
        {
            most = Math.Max(most, picture.Cast(new FlatPoint(at.X + (i + 0.013) * StepMm, at.Y + (i - 0.017) * StepMm)).Count);
        }

        return most > 1 && Enumerable.Range(1, most - 1).Any(behind => IsBreak(picture, at, behind));
    }

    // Breaks of the seen surface that no line runs along, those that lie together as one: from where to where, and of how many places.
    private static IEnumerable<(FlatPoint From, FlatPoint To, int Count)> Missing(RayPicture picture, OutlineView view)
    {
        var near = new Dictionary<(int X, int Y), List<(FlatPoint A, FlatPoint B)>>();
        (int X, int Y) Cell(FlatPoint p) => ((int)Math.Floor(p.X / 0.2), (int)Math.Floor(p.Y / 0.2));
        foreach (var line in view.Lines.Where(line => line.IsVisible))
        {
            for (var i = 1; i < line.Points.Length; i++)
            {
                var (low, high) = (
                    Cell(new(Math.Min(line.Points[i - 1].X, line.Points[i].X) - NearMm, Math.Min(line.Points[i - 1].Y, line.Points[i].Y) - NearMm)),
                    Cell(new(Math.Max(line.Points[i - 1].X, line.Points[i].X) + NearMm, Math.Max(line.Points[i - 1].Y, line.Points[i].Y) + NearMm)));
                for (var x = low.X; x <= high.X; x++)
                {
                    for (var y = low.Y; y <= high.Y; y++)
                    {
                        near.TryAdd((x, y), []);
                        near[(x, y)].Add((line.Points[i - 1], line.Points[i]));
                    }
                }
            }
        }

        // Rays in rows and columns; each is compared with its neighbours to the right and above.
        var (left, low0, right, high0) = picture.Box;
        int columns = (int)((right - left) / StepMm) + 3, rows = (int)((high0 - low0) / StepMm) + 3;
        FlatPoint At(int column, int row) => new(left + (column - 0.93) * StepMm, low0 + (row - 0.91) * StepMm);
        var first = new RayPicture.Hit?[columns, rows];
        for (var column = 0; column < columns; column++)
        {
            for (var row = 0; row < rows; row++)
            {
                first[column, row] = picture.Cast(At(column, row)) is [var hit, ..] ? hit : null;
            }
        }

        var missed = new List<FlatPoint>();
        void Compare(int column, int row, int other, int above)
        {
            if (first[column, row] is null && first[other, above] is null)
            {
                return;
            }

            if (first[column, row] is { } one && first[other, above] is { } two && Math.Abs(one.Depth - two.Depth) < JumpMm)
            {
                return;
            }

            if (BreakBetween(picture, At(column, row), At(other, above)) is { } at
                && !(near.TryGetValue(Cell(at), out var lines) && lines.Exists(line => DistanceTo(at, line.A, line.B) <= NearMm)))
            {
                missed.Add(at);
            }
        }

        for (var column = 0; column + 1 < columns; column++)
        {
            for (var row = 0; row + 1 < rows; row++)
            {
                Compare(column, row, column + 1, row);
                Compare(column, row, column, row + 1);
            }
        }

        while (missed.Count > 0)
        {
            var group = new List<FlatPoint> { missed[^1] };
            missed.RemoveAt(missed.Count - 1);
            for (var i = 0; i < group.Count; i++)
            {
                var together = missed.Where(p => (p - group[i]).Length < 0.08).ToList();
                group.AddRange(together);
                missed.RemoveAll(together.Contains);
            }

            FlatPoint from = new(group.Min(p => p.X), group.Min(p => p.Y)), to = new(group.Max(p => p.X), group.Max(p => p.Y));
            if ((to - from).Length > SpeckMm)
            {
                yield return (from, to, group.Count);
            }
        }
    }

    // Halves the way between two rays towards the larger jump: a steep wall becomes a slope, a break stays one.
    private static FlatPoint? BreakBetween(RayPicture picture, FlatPoint a, FlatPoint b)
    {
        double? Depth(FlatPoint p) => picture.Cast(p) is [var hit, ..] ? hit.Depth : null;
        double? atA = Depth(a), atB = Depth(b);
        double Jump(double? one, double? other) => one is null && other is null ? 0 : one is null || other is null ? double.PositiveInfinity : Math.Abs(one.Value - other.Value);
        for (var i = 0; i < 9; i++)
        {
            var middle = (a + b) * 0.5;
            var at = Depth(middle);
            (a, atA, b, atB) = Jump(atA, at) >= Jump(at, atB) ? (a, atA, middle, at) : (middle, at, b, atB);
        }

        return Jump(atA, atB) > 0.8 * JumpMm ? a : null;
    }

    private static double DistanceTo(FlatPoint p, FlatPoint a, FlatPoint b)
    {
        var along = b - a;
        var share = Math.Clamp((p - a).Dot(along) / Math.Max(along.Dot(along), 1e-30), 0, 1);
        return (p - a - along * share).Length;
    }
}
