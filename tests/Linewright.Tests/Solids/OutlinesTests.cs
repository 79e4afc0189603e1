using CsCheck;
using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Outlines;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using Linewright.Stones;
using Plane = Linewright.Solids.Polyhedra.Plane;

namespace Linewright.Tests.Solids;

/// <summary>Views and sections of bodies whose drawings are known.</summary>
public class OutlinesTests
{
    private static readonly ViewFrame Front = ViewFrame.From(-Vec3.UnitY, Vec3.UnitZ), Top = ViewFrame.From(Vec3.UnitZ, Vec3.UnitY), Left = ViewFrame.From(-Vec3.UnitX, Vec3.UnitZ);

    private static readonly OutlineSettings WithHidden = OutlineSettings.Fine with { WithHidden = true };

    [Fact]
    public void Each_of_a_boxs_three_views_is_its_rectangle_and_nothing_hides()
    {
        var box = Box(2, 3, 4);
        foreach (var (frame, width, height) in new[] { (Front, 2.0, 4.0), (Top, 2.0, 3.0), (Left, 3.0, 4.0) })
        {
            var view = OutlineDrawer.Draw([box], frame, WithHidden);

            // What lies behind lies exactly behind the front edges: it is not drawn twice.
            Assert.All(view.Lines, line => Assert.True(line.IsVisible));
            Assert.Equal(2 * (width + height), view.Lines.Sum(line => line.Length), 1e-9);
            Assert.All(view.Lines.SelectMany(line => line.Points), p => Assert.True(
                Math.Abs(Math.Abs(p.X) - width / 2) < 1e-9 || Math.Abs(Math.Abs(p.Y) - height / 2) < 1e-9, $"{p}"));
        }
    }

    [Fact]
    public void A_box_seen_from_its_corner_shows_nine_edges_and_hides_three()
    {
        // Isometric: every edge of a cube is shortened by the root of 2/3. Standard: ISO 5456-3.
        var view = OutlineDrawer.Draw([Box(1, 1, 1)], ViewFrame.From(new Vec3(1, -1, 1), Vec3.UnitZ), WithHidden);
        var edge = Math.Sqrt(2.0 / 3);
        Assert.Equal(9 * edge, view.Lines.Where(line => line.IsVisible).Sum(line => line.Length), 0.05);
        Assert.Equal(3 * edge, view.Lines.Where(line => !line.IsVisible).Sum(line => line.Length), 0.05);
    }

    [Fact]
    public void What_stands_behind_is_cut_off_where_the_front_begins()
    {
        // A rod 6 long lies behind a plate from -1 to 1: 2 of each of its long edges are hidden.
        var plate = new PlacedBody(OutlineBody.Of(Cuboid(2, 0.5, 4)), Pose.Identity, 1);
        var rod = new PlacedBody(OutlineBody.Of(Cuboid(6, 0.5, 1)), Pose.Move(0, 2, 0), 2);
        var view = OutlineDrawer.Draw([plate, rod], Front, WithHidden);
        var hidden = view.Lines.Where(line => !line.IsVisible).ToList();
        Assert.All(hidden, line => Assert.Equal(2, line.Tag));
        Assert.Equal(4, hidden.Sum(line => line.Length), 3 * WithHidden.LiftMm);
        Assert.Equal(2 * (2 + 4) + 2 * (4 + 1), view.Lines.Where(line => line.IsVisible).Sum(line => line.Length), 5 * WithHidden.LiftMm);
    }

    [Fact]
    public void A_short_contour_that_runs_into_a_still_shorter_line_is_kept()
    {
        // Once lost: a claw's tip whose arc ends at lines that are drawn after it. Four pegs stand out of a plate; each shows its round end.
        Solid Peg(double x) => Shape.Capsule(new Vec3(x, 0, 0), new Vec3(x, 0, 0.6), 0.12);
        var view = OutlineDrawer.Draw([Meshed(Solid.Union(Shape.Box(3, 1, 0.4), Peg(-1), Peg(-0.4), Peg(0.4), Peg(1)), 0.05)], Front, OutlineSettings.Fine);
        foreach (var x in (double[])[-1, -0.4, 0.4, 1])
        {
            Assert.Contains(view.Lines.SelectMany(line => line.Points), p => Math.Abs(p.X - x) < 0.06 && Math.Abs(p.Y - 0.72) < 0.02);
        }
    }

    [Fact]
    public void A_mask_hides_and_is_not_drawn()
    {
        var plate = new PlacedBody(OutlineBody.Of(Cuboid(2, 0.5, 4)), Pose.Identity, 1, IsMask: true);
        var rod = new PlacedBody(OutlineBody.Of(Cuboid(6, 0.5, 1)), Pose.Move(0, 2, 0), 2);
        var view = OutlineDrawer.Draw([plate, rod], Front, OutlineSettings.Fine);
        Assert.All(view.Lines, line => Assert.Equal(2, line.Tag));
        Assert.Equal(2 * (4 + 1), view.Lines.Sum(line => line.Length), 5 * WithHidden.LiftMm);
    }

    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(1, 2, -0.5)]
    [InlineData(-0.3, 0.9, 0.2)]
    public void A_balls_contour_is_a_circle(double x, double y, double z)
    {
        var view = OutlineDrawer.Draw([Meshed(Shape.Ball(1.5), 0.08)], ViewFrame.From(new Vec3(x, y, z), new Vec3(0.1, 0.2, 1.1)), WithHidden);
        var line = Assert.Single(view.Lines);
        Assert.Equal((OutlineKind.Contour, true), (line.Kind, line.IsVisible));
        Assert.All(line.Points, p => Assert.Equal(1.5, p.Length, 0.006));
        Assert.Equal(2 * Math.PI * 1.5, line.Length, 0.02);
        Assert.Equal(0, (line.Points[0] - line.Points[^1]).Length, 0.02);
    }

    [Fact]
    public void A_ring_seen_along_its_axis_is_two_circles()
    {
        var view = OutlineDrawer.Draw([Meshed(Shape.Torus(2, 0.5), 0.08)], Top, WithHidden);
        Assert.Equal([1.5, 2.5], view.Lines.Select(line => Math.Round(line.Points.Average(p => p.Length), 2)).Order());
        Assert.Equal(2 * Math.PI * (1.5 + 2.5), view.Lines.Sum(line => line.Length), 0.05);
        Assert.All(view.Lines, line => Assert.True(line.IsVisible));
    }

    [Fact]
    public void A_hole_through_a_plate_is_dashed_from_the_side_and_a_circle_from_above()
    {
        var plate = Meshed(Shape.Box(6, 4, 1).Minus(Shape.Cylinder(1, 3)), 0.1);
        var side = OutlineDrawer.Draw([plate], Front, WithHidden);
        var hidden = side.Lines.Where(line => !line.IsVisible).ToList();
        Assert.Equal([-1.0, 1.0], hidden.Select(line => Math.Round(line.Points.Average(p => p.X), 2)).Order());
        Assert.All(hidden, line => Assert.Equal(1, line.Length, 0.05));
        Assert.Equal(2 * (6 + 1), side.Lines.Where(line => line.IsVisible).Sum(line => line.Length), 0.05);

        var above = OutlineDrawer.Draw([plate], Top, WithHidden);
        Assert.Equal(2 * (6 + 4) + 2 * Math.PI, above.Lines.Sum(line => line.Length), 0.1);
        Assert.All(above.Lines, line => Assert.True(line.IsVisible));
    }

    [Fact]
    public void What_a_stones_outline_holds_is_its_shadow()
    {
        // Another way to the same area: a convex body's shadow is half the sum of its faces, each by its slope to the light.
        // Source: Cauchy (1841), on the surfaces of convex bodies.
        var body = RoundBrilliant.Cut(3, BrilliantProportions.Modern).Stone!.Body;
        var placed = new PlacedBody(OutlineBody.Of(body, 0.01), Pose.Identity, 0);
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1]).Where(v => new Vec3(v.Item1, v.Item2, v.Item3).Length > 0.3).Sample(
            v =>
            {
                var eye = new Vec3(v.Item1, v.Item2, v.Item3);
                var frame = ViewFrame.From(eye, new Vec3(0.36, 0.48, 1.8));
                var view = OutlineDrawer.Draw([placed], frame, OutlineSettings.Fine);
                var shadow = body.Faces.Sum(face => face.Area * Math.Abs(face.Plane.Normal.Dot(frame.Toward))) / 2;

                // Lines shorter than 0.04 mm are left out: seen along its facets, a corner of the girdle may be cut by as much.
                Assert.Equal(shadow, HullArea(view.Lines.SelectMany(line => line.Points)), 0.012 * shadow);
            },
            iter: 30,
            threads: 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.7)]
    [InlineData(-1.2)]
    public void A_section_through_a_ball_has_a_circles_area(double depth)
    {
        var view = OutlineDrawer.Draw([Meshed(Shape.Ball(1.5), 0.08)], Front, OutlineSettings.Fine with { CutDepth = depth });
        var cut = Assert.Single(view.Cuts);
        Assert.Equal(Math.PI * (1.5 * 1.5 - depth * depth), cut.Area, 0.03);
        Assert.Contains(view.Lines, line => line.Kind == OutlineKind.Cut);
    }

    [Fact]
    public void A_section_through_a_ring_is_two_discs_and_its_hole_runs_the_other_way()
    {
        var ring = Meshed(Shape.Torus(2, 0.5), 0.08);
        var across = Assert.Single(OutlineDrawer.Draw([ring], Front, OutlineSettings.Fine with { CutDepth = 0 }).Cuts);
        Assert.Equal(2, across.Loops.Length);
        Assert.Equal(2 * Math.PI * 0.25, across.Area, 0.01);

        var level = Assert.Single(OutlineDrawer.Draw([ring], Top, OutlineSettings.Fine with { CutDepth = 0 }).Cuts);
        Assert.Equal(Math.PI * (2.5 * 2.5 - 1.5 * 1.5), level.Area, 0.05);
        Assert.Equal([-1, 1], level.Loops.Select(loop => Math.Sign(CutArea.AreaOf(loop))).Order());
    }

    [Fact]
    public void Hatching_covers_its_area_and_leaves_the_hole_free()
    {
        var cut = Assert.Single(OutlineDrawer.Draw([Meshed(Shape.Torus(2, 0.5), 0.08)], Top, OutlineSettings.Fine with { CutDepth = 0 }).Cuts);
        var lines = Hatching.Lines(cut, Math.PI / 4, 0.02);
        Assert.Equal(cut.Area, lines.Sum(line => (line.To - line.From).Length) * 0.02, 0.02);
        Assert.All(lines, line => Assert.InRange(((line.From + line.To) * 0.5).Length, 1.0, 2.5));
        Assert.DoesNotContain(lines, line => line.From.Length < 1.45 || line.To.Length < 1.45);
    }

    [Fact]
    public void A_cut_takes_away_what_stands_before_it_and_shows_what_lies_beyond()
    {
        // A tube, closed at the far end by nothing: cut along its axis one sees the two walls and the far edges of its ends.
        var tube = Meshed(Shape.Cylinder(1, 4).Minus(Shape.Cylinder(0.6, 5)), 0.08);
        var view = OutlineDrawer.Draw([tube], Front, OutlineSettings.Fine with { CutDepth = 0 });
        var cut = Assert.Single(view.Cuts);
        Assert.Equal(2 * 0.4 * 4, cut.Area, 0.02);
        Assert.Equal(2, cut.Loops.Length);

        // Beyond: the ends of the bore, from wall to wall.
        Assert.Equal(2 * 1.2, view.Lines.Where(line => line.Kind != OutlineKind.Cut).Sum(line => line.Length), 8 * OutlineSettings.Fine.SameMm);
    }

    [Fact]
    public void The_same_bodies_give_the_same_lines_and_a_mirrored_body_the_mirrored_view()
    {
        var cone = Meshed(Shape.TaperedCapsule(Vec3.Zero, 0.8, new Vec3(1.5, 0.4, 0.9), 0.3), 0.08);
        var once = OutlineDrawer.Draw([cone], Front, WithHidden).Lines;
        Assert.Equal(Said(once), Said(OutlineDrawer.Draw([cone], Front, WithHidden).Lines));
        var mirrored = OutlineDrawer.Draw([cone with { Pose = Pose.Mirror(Vec3.UnitX) }], Front, WithHidden).Lines;
        Assert.Equal(once.Sum(line => line.Length), mirrored.Sum(line => line.Length), 0.01);
        Assert.Equal(once.SelectMany(line => line.Points).Max(p => p.X), -mirrored.SelectMany(line => line.Points).Min(p => p.X), 0.01);
    }

    [Fact]
    public void A_view_needs_an_up_that_is_not_its_direction()
        => Assert.Throws<ArgumentException>(() => ViewFrame.From(Vec3.UnitZ, -Vec3.UnitZ));

    private static string Said(IEnumerable<OutlineLine> lines) => string.Join('\n', lines.Select(line => FormattableString.Invariant($"{line.Kind} {line.IsVisible} {string.Join(' ', line.Points)}")));

    private static PlacedBody Box(double x, double y, double z) => new(OutlineBody.Of(Cuboid(x, y, z)), Pose.Identity, 0);

    private static ConvexPolyhedron Cuboid(double x, double y, double z)
        => ConvexPolyhedron.FromPlanes([new Plane(Vec3.UnitX, x / 2), new Plane(-Vec3.UnitX, x / 2), new Plane(Vec3.UnitY, y / 2), new Plane(-Vec3.UnitY, y / 2), new Plane(Vec3.UnitZ, z / 2), new Plane(-Vec3.UnitZ, z / 2)]).Body!;

    private static PlacedBody Meshed(Solid solid, double cell)
    {
        var mesh = Mesher.Run(solid, new MeshSettings(cell, 0.005, true), threads: 1).Mesh;
        var surface = CreasedNormals.Of(mesh, solid);
        return new PlacedBody(OutlineBody.Of(surface.Positions, surface.Normals, surface.Triangles), Pose.Identity, 0);
    }

    // Source: Andrew (1979), Information Processing Letters 9, 216: the monotone chain.
    private static double HullArea(IEnumerable<FlatPoint> points)
    {
        var sorted = points.OrderBy(p => p.X).ThenBy(p => p.Y).ToList();
        List<FlatPoint> Half(IEnumerable<FlatPoint> run)
        {
            var hull = new List<FlatPoint>();
            foreach (var p in run)
            {
                while (hull.Count > 1 && (hull[^1] - hull[^2]).Cross(p - hull[^1]) <= 0)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
            return hull;
        }

        return CutArea.AreaOf([.. Half(sorted), .. Half(Enumerable.Reverse(sorted))]);
    }
}
