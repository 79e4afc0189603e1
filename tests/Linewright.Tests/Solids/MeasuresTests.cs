using CsCheck;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

public class MeasuresTests
{
    // Volume, surface, and the parts per million allowed. By Pappus's centroid theorem, or elementary solid geometry.
    public static TheoryData<string, double, double, double> ClosedForms => new()
    {
        { "torus 1.9 0.4", 6.000719, 2 * Math.PI * 1.9 * 2 * Math.PI * 0.4, 3 },
        { "torus 3 0.4", 9.474820, 47.374101, 3 },
        { "ball 2.5", 65.449847, 4 * Math.PI * 2.5 * 2.5, 3 },
        { "cone 1.5 x 2", 4.712389, Math.PI * 1.5 * 1.5 + Math.PI * 1.5 * 2.5, 12 }, // One long triangle to the tip.
        { "frustum 1.5 1.0 x 2", 9.948377, Math.PI * (2.25 + 1 + 2.5 * Math.Sqrt(4.25)), 3 },
        { "tube 1.8 0.9 x 3", 5.725553, 2 * Math.PI * (0.9 + 0.45) * 3 + 2 * Math.PI * (0.81 - 0.2025), 3 },
        { "pin 0.8 x 3", 1.50796, Math.PI * 0.8 * 3 + 2 * Math.PI * 0.16, 3 },
    };

    [Theory]
    [MemberData(nameof(ClosedForms))]
    public void A_mesh_with_its_solid_weighs_what_the_closed_form_says(string name, double volume, double area, double ppm)
    {
        var (solid, mesh) = Named(name);
        var awry = HandMadeMeshes.Awry;
        var measured = MassProperties.Of(mesh.Moved(awry), solid.Moved(awry));
        Assert.Equal(volume, measured.Volume, volume * ppm * 1e-6);

        // The mesh's own surface is short of the true one by the chord error only.
        Assert.Equal(area, measured.Area, area * 2e-3);
    }

    [Fact]
    public void A_box_is_measured_exactly()
    {
        var measured = MassProperties.Of(HandMadeMeshes.Box(2, 3, 4));
        Assert.Equal(24, measured.Volume, 1e-12);
        Assert.Equal(2 * (6 + 8 + 12), measured.Area, 1e-12);

        // A box of mass m has m (b2 + c2) / 12 about its middle. Source: any table of moments of inertia.
        Assert.Equal(24.0 * (9 + 16) / 12, measured.Inertia.XX, 1e-10);
        Assert.Equal(24.0 * (4 + 16) / 12, measured.Inertia.YY, 1e-10);
        Assert.Equal(24.0 * (4 + 9) / 12, measured.Inertia.ZZ, 1e-10);
        Assert.Equal(0, measured.Inertia.XY, 1e-10);
    }

    [Fact]
    public void A_ball_has_two_fifths_of_its_mass_times_radius_squared()
    {
        // Source: any table of moments of inertia.
        var measured = MassProperties.Of(HandMadeMeshes.Ball(2.5, 60), Shape.Ball(2.5));
        var expected = 0.4 * 65.449847 * 6.25;
        Assert.Equal(expected, measured.Inertia.XX, expected * 2e-5);
        Assert.Equal(expected, measured.Inertia.ZZ, expected * 2e-5);
        Assert.Equal(expected, measured.Inertia.About(new Vec3(1, 2, -1)), expected * 2e-5);
    }

    [Fact]
    public void Turning_and_moving_a_body_changes_neither_weight_nor_inertia_and_carries_its_centroid()
    {
        var mesh = HandMadeMeshes.Frustum(1.5, 0.5, 2, 48);
        var rest = MassProperties.Of(mesh);
        Gen.Select(Gen.Double[-5, 5], Gen.Double[-5, 5], Gen.Double[-3, 3]).Sample((x, y, angle) =>
        {
            var pose = Pose.TurnAbout(new Vec3(x, y, 1), new Vec3(y, 1, x), angle);
            var moved = MassProperties.Of(mesh.Moved(pose));
            Assert.Equal(rest.Volume, moved.Volume, 1e-5);
            Assert.True((pose.Point(rest.Centroid) - moved.Centroid).Length < 1e-5);
            Assert.Equal(rest.Inertia.XX, moved.Inertia.About(pose.Direction(Vec3.UnitX)), 1e-4);
            Assert.Equal(rest.Inertia.ZZ, moved.Inertia.About(pose.Direction(Vec3.UnitZ)), 1e-4);
        }, iter: 40);
    }

    [Fact]
    public void Scaling_by_1_006_grows_the_volume_by_1_018108()
    {
        var mesh = HandMadeMeshes.Torus(1.9, 0.4, 60, 24);
        Assert.Equal(1.018108, MassProperties.Of(mesh.Scaled(1.006)).Volume / MassProperties.Of(mesh).Volume, 1e-6);
    }

    [Fact]
    public void A_mirrored_mesh_keeps_its_volume_and_one_turned_inside_out_loses_it()
    {
        var mesh = HandMadeMeshes.Frustum(1.5, 0.5, 2, 24);
        var volume = MassProperties.Of(mesh).Volume;
        Assert.Equal(volume, MassProperties.Of(mesh.Moved(Pose.Mirror(new Vec3(1, 2, 3)))).Volume, 1e-5);
        var corners = mesh.Triangles.ToArray();
        Array.Reverse(corners);
        Assert.Equal(-volume, MassProperties.Of(new Mesh(mesh.Positions.ToArray(), corners)).Volume, 1e-9);
    }

    [Fact]
    public void The_gap_of_two_balls_is_the_distance_of_their_centres_less_their_radii()
    {
        Body a = BallBody("a", 1.0), b = BallBody("b", 0.6);
        Gen.Select(Gen.Double[-4, 4], Gen.Double[-4, 4], Gen.Double[-4, 4]).Sample((x, y, z) =>
        {
            var at = new Vec3(x, y, z);
            var expected = at.Length - 1.6;
            if (expected < 0.001)
            {
                return;
            }

            var pose = Pose.Turn(new Vec3(1, 1, 0), x) with { Origin = at };
            var found = Clearance.Between([a], Pose.Identity, [b], pose);
            Assert.Equal(expected, found.GapMm, 2e-4);
            Assert.Equal(1.0, found.AtA.Length, 1e-5);
            Assert.Equal(0.6, (found.AtB - at).Length, 1e-5);
            Assert.Equal(found.GapMm, (found.AtA - found.AtB).Length, 1e-6);
        }, iter: 60);
    }

    [Theory]
    [InlineData(0.3, 0.4, 0.0, 0.5)] // Corner regions of two axis-parallel boxes: the gap is the diagonal of the offsets.
    [InlineData(0.3, 0.0, 0.0, 0.3)]
    [InlineData(0.2, 0.3, 0.6, 0.7)]
    [InlineData(-0.1, 0.25, 0.0, 0.25)]
    public void The_gap_of_two_boxes_is_exact_past_their_edges_even_where_the_distance_is_understated(double x, double y, double z, double gap)
    {
        // Planes alone understate past edges; the exact box does not. Both must find the same gap.
        var mesh = HandMadeMeshes.Box(2, 2, 2);
        foreach (var solid in new[] { Shape.Box(2, 2, 2), PlanesOfBox(1, 1, 1) })
        {
            var body = new Body("box", solid, ProbeSurface.Of(solid, mesh, 0.1));
            double Offset(double v) => v == 0 ? 0.3 : 2 + v;
            var found = Clearance.Between([body], Pose.Identity, [body], Pose.Move(Offset(x), Offset(y), Offset(z)));
            Assert.Equal(gap, found.GapMm, 1e-3);
        }
    }

    [Fact]
    public void Overlap_is_reported_as_a_depth_below_zero()
    {
        Body a = BallBody("a", 1.0), b = BallBody("b", 0.6);
        var found = Clearance.Between([a], Pose.Identity, [b], Pose.Move(1.5, 0, 0));
        Assert.Equal(-0.1, found.GapMm, 1e-3);
    }

    [Fact]
    public void The_answer_names_the_bodies_that_are_nearest()
    {
        Body stone = BallBody("stone", 1.0), claw = BallBody("claw", 0.3), rail = BallBody("rail", 0.3);
        Body farRail = rail with { Solid = rail.Solid.Moved(9, 0, 0), Probes = ProbeSurface.Of(rail.Solid.Moved(9, 0, 0), HandMadeMeshes.Ball(0.3, 16).Moved(Pose.Move(9, 0, 0)), 0.1) };
        var found = Clearance.Between([farRail, stone], Pose.Identity, [claw, rail], Pose.Move(0, 0, 1.5));
        Assert.Equal(("stone", "claw"), (found.NameA, found.NameB));
        Assert.Equal(0.2, found.GapMm, 1e-4);
        Assert.Equal(ClearanceResult.None, Clearance.Between([stone], Pose.Identity, [claw], Pose.Move(0, 0, 1.5), within: 0.1));
    }

    [Theory]
    [InlineData("box", "capsule")]
    [InlineData("rounded cylinder", "torus")]
    [InlineData("torus", "torus")]
    [InlineData("rounded box", "rounded ring")]
    public void Culling_misses_no_probe_and_the_pair_lies_on_both_surfaces(string nameA, string nameB)
    {
        Solid a = NamedSolids.All[nameA], b = NamedSolids.All[nameB];
        Body bodyA = new(nameA, a, ProbeSurface.Of(a, Meshed(a), 0.15)), bodyB = new(nameB, b, ProbeSurface.Of(b, Meshed(b), 0.15));
        var coordinate = Gen.Double[-2.5, 2.5];
        Gen.Select(coordinate, coordinate, coordinate, Gen.Double[-3, 3]).Sample((x, y, z, angle) =>
        {
            Pose poseA = HandMadeMeshes.Awry, poseB = Pose.Turn(new Vec3(x, 1, y), angle).Then(Pose.Move(x + 1, y + 2, z + 3));
            var found = Clearance.Between([bodyA], poseA, [bodyB], poseB);

            // Every probe, one by one, without clusters.
            var lowest = Math.Min(Lowest(bodyA.Probes, poseA, b, poseB), Lowest(bodyB.Probes, poseB, a, poseA));
            Assert.True(found.GapMm <= lowest + 2e-5, FormattableString.Invariant($"{found.GapMm} above {lowest}"));
            if (found.GapMm > 0)
            {
                Assert.Equal(0, a.Distance(poseA.Inverse().Point(found.AtA)), 1e-4);
                Assert.Equal(0, b.Distance(poseB.Inverse().Point(found.AtB)), 1e-4);

                // These distances are exact: no gap is smaller than what the refined point itself feels.
                Assert.Equal(found.GapMm, b.Distance(poseB.Inverse().Point(found.AtA)), 1e-3);
            }
        }, iter: 40);

        static double Lowest(ProbeSurface probes, Pose pose, Solid other, Pose otherPose)
        {
            var into = pose.Then(otherPose.Inverse());
            return Enumerable.Range(0, probes.Count).Min(i => other.Distance(into.Point(probes.Point(i))));
        }
    }

    [Fact]
    public void Probes_cover_the_surface_and_lie_on_it()
    {
        var solid = NamedSolids.All["filleted union"];
        var probes = ProbeSurface.Of(solid, Meshed(solid), 0.2);
        var fine = ProbeSurface.Of(solid, Meshed(solid), 0.05);
        var points = Enumerable.Range(0, probes.Count).Select(probes.Point).ToArray();
        Assert.All(points, p => Assert.Equal(0, solid.Distance(p), 2e-5));
        for (var i = 0; i < fine.Count; i += 7)
        {
            Assert.True(points.Min(p => (p - fine.Point(i)).Length) <= probes.Cover);
        }

        // No crowding either: one to three probes a square of the spacing.
        var area = MassProperties.Of(Meshed(solid)).Area;
        Assert.InRange(probes.Count, area / 0.04, 3 * area / 0.04);
        var part = ProbeSurface.Of(solid, Meshed(solid), 0.2, p => p.Z > 0.5);
        Assert.InRange(part.Count, 1, probes.Count / 2);
    }

    [Fact]
    public void An_eye_turns_freely_round_its_bar_until_its_neck_meets_a_stop()
    {
        // Bar of 1.0 in an eye of 1.1. The eye's neck is 0.6 high and starts out opposite a stop of the same height.
        var hole = Shape.Cylinder(0.55, 3);
        var eye = Solid.Union(Shape.Ring(0.55, 1.2, 1), Shape.BoxBetween(new Vec3(-3, -0.3, -0.5), new Vec3(-0.8, 0.3, 0.5))).Minus(hole);
        var bar = Shape.Cylinder(0.5, 3);
        var stop = Shape.BoxBetween(new Vec3(1.5, -0.3, -0.5), new Vec3(3, 0.3, 0.5));
        Body eyeBody = Felt("eye", eye), barBody = Felt("bar", bar), stopBody = Felt("stop", stop);

        // The stop's inner corner at (1.5, 0.3) meets the neck's side, which lies 0.3 off the neck's middle line: that is
        // when the corner stands atan(0.3 / 1.5) off that line, and as much off the stop's own.
        var expected = Math.PI - 2 * Math.Atan2(0.3, 1.5);
        foreach (var way in new[] { 1, -1 })
        {
            var found = FirstContact.Turning([barBody, stopBody], Pose.Identity, [eyeBody], Pose.Identity, Vec3.Zero, Vec3.UnitZ, way * Math.PI);
            Assert.True(found.Touches);
            Assert.Equal("stop", found.Nearest.NameA);
            Assert.Equal(way * expected, found.Angle, 0.05 * Math.PI / 180);
        }

        var free = FirstContact.Turning([barBody], Pose.Identity, [eyeBody], Pose.Identity, Vec3.Zero, Vec3.UnitZ, Math.PI);
        Assert.False(free.Touches);
        Assert.Equal(0.05, free.LeastGapMm, 5e-4);

        // A bearing with less room than asked for is in contact from the start.
        Assert.Equal(0, FirstContact.Turning([barBody], Pose.Identity, [eyeBody], Pose.Identity, Vec3.Zero, Vec3.UnitZ, 1, 0.06).Angle);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(-1.0)]
    public void A_ball_swung_round_an_axis_stops_where_the_chord_says(double way)
    {
        // Two balls of radius 0.5 on a circle of radius 3 about z: they touch when the chord 2 R sin(a / 2) is 1.
        var body = BallBody("ball", 0.5);
        Pose rest = Pose.Move(3, 0, 0), start = Pose.Move(-3, 0, 0);
        foreach (var clearance in new[] { 0, 0.1 })
        {
            var expected = Math.PI - 2 * Math.Asin((1 + clearance) / 6);
            var found = FirstContact.Turning([body], rest, [body], start, Vec3.Zero, Vec3.UnitZ, way * Math.PI, clearance);
            Assert.True(found.Touches);
            Assert.Equal(way * expected, found.Angle, 0.02 * Math.PI / 180);
            Assert.Equal(clearance, found.LeastGapMm, 2e-3);
            var family = FirstContact.Angle([body], rest, [body], a => start.Then(Pose.Turn(Vec3.UnitZ, a)), way * Math.PI, 3.5, clearance);
            Assert.Equal(found.Angle, family.Angle, 0.02 * Math.PI / 180);
        }
    }

    [Fact]
    public void Square_corners_below_the_axis_close_at_the_angle_the_bend_relief_formula_gives()
    {
        // Two boxes h below the axis, a gap apart: each face stands gap / 2 from the axis plane, so the lower corners
        // meet when gap = 2 h tan(angle / 2). With h 1.2 and 30 degrees the gap is 0.643078 mm.
        var solid = PlanesOfBox(1, 1, 0.6);
        var body = new Body("link", solid, ProbeSurface.Of(solid, HandMadeMeshes.Box(2, 2, 1.2), 0.1));
        Pose left = Pose.Move(-1 - 0.643078 / 2, 0, -0.6), right = Pose.Move(1 + 0.643078 / 2, 0, -0.6);
        var found = FirstContact.Turning([body], left, [body], right, Vec3.Zero, Vec3.UnitY, 1.0);
        Assert.True(found.Touches);
        Assert.Equal(Math.PI / 6, found.Angle, 0.05 * Math.PI / 180);
        Assert.Equal(-1.2, found.Nearest.AtA.Z, 0.02);
    }

    [Fact]
    public void A_thing_that_passes_freely_reports_its_least_gap_on_the_way()
    {
        var body = BallBody("ball", 0.5);
        var found = FirstContact.Turning([body], Pose.Move(0, 3, 1.2), [body], Pose.Move(3, 0, 0), Vec3.Zero, Vec3.UnitZ, Math.PI);
        Assert.False(found.Touches);
        Assert.Equal(Math.PI, found.Angle);
        Assert.Equal(0.2, found.LeastGapMm, 5e-3);
        Assert.Equal(Math.PI / 2, found.NearestAngle, 0.1);
    }

    [Fact]
    public void Nothing_thin_is_stepped_over()
    {
        // A wire of 0.1 mm in the way of a swinging ball, far from the start.
        var ball = BallBody("ball", 0.3);
        var wireSolid = Shape.Cylinder(0.05, 2);
        var wire = new Body("wire", wireSolid, ProbeSurface.Of(wireSolid, HandMadeMeshes.Frustum(0.05, 0.05, 2, 12).Moved(Pose.Move(0, 0, -1)), 0.1));
        var found = FirstContact.Turning([wire], Pose.Move(0, 5, 0), [ball], Pose.Move(5, 0, 0), Vec3.Zero, Vec3.UnitZ, Math.PI);
        Assert.True(found.Touches);
        Assert.Equal(Math.PI / 2 - 2 * Math.Asin(0.35 / 10), found.Angle, 0.05 * Math.PI / 180);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.8)]
    public void A_plate_is_as_thick_as_it_was_made_and_its_edges_are_no_walls(double thickness)
    {
        var solid = Shape.Box(4, 3, thickness);
        var mesh = HandMadeMeshes.Box(4, 3, thickness);
        var thinnest = WallMeasure.Thinnest(solid, mesh, 1);
        Assert.NotNull(thinnest);
        Assert.Equal(thickness, thinnest.Value.ThicknessMm, 5e-3);
        Assert.Equal(1, Math.Abs(thinnest.Value.Normal.Z), 1e-6);
        Assert.Null(WallMeasure.Thinnest(solid, mesh, thickness * 0.98));
    }

    [Fact]
    public void A_tube_is_thinnest_where_its_bore_is_off_centre()
    {
        // Bore of radius 0.5, 0.1 off the axis of a pin of radius 1: the thin side has 1 - 0.5 - 0.1.
        var solid = Shape.Cylinder(1, 2).Minus(Shape.Cylinder(0.5, 3).Moved(0.1, 0, 0));
        var mesh = Meshed(solid);
        var thinnest = WallMeasure.Thinnest(solid, mesh, 0.6);
        Assert.NotNull(thinnest);
        Assert.Equal(0.4, thinnest.Value.ThicknessMm, 5e-3);
        Assert.True(thinnest.Value.At.X > 0.5);
    }

    [Fact]
    public void A_ring_of_wire_is_as_thick_as_its_wire_all_round()
    {
        var solid = Shape.Torus(1.5, 0.35).Moved(HandMadeMeshes.Awry);
        var mesh = HandMadeMeshes.Torus(1.5, 0.35, 60, 24).Moved(HandMadeMeshes.Awry);
        var samples = WallMeasure.Below(solid, mesh, 0.8, spacing: 0.1);
        Assert.True(samples.Count > 1500);
        Assert.All(samples, s => Assert.InRange(s.ThicknessMm, 0.695, 0.705));
    }

    [Fact]
    public void Parts_that_overlap_are_not_read_as_thin_where_they_join()
    {
        // A post of 0.8 stands in a plate of 0.5: under the post metal is thick, only the plate beside it reads 0.5.
        var solid = Solid.Union(Shape.BoxBetween(new Vec3(-1.5, -1.5, 0), new Vec3(1.5, 1.5, 0.5)), Shape.BoxBetween(new Vec3(-0.4, -0.4, 0.2), new Vec3(0.4, 0.4, 3)));
        var mesh = Meshed(solid);
        var below = WallMeasure.Below(solid, mesh, 0.7);
        Assert.NotEmpty(below);
        Assert.All(below, s => Assert.Equal(0.5, s.ThicknessMm, 5e-3));
        Assert.DoesNotContain(below, s => Math.Abs(s.At.X) < 0.3 && Math.Abs(s.At.Y) < 0.3);

        // The post's own width shows once the limit is above it.
        var post = WallMeasure.Thinnest(solid, mesh, 1, p => p.Z > 1);
        Assert.Equal(0.8, post!.Value.ThicknessMm, 5e-3);
    }

    [Fact]
    public void Each_label_has_its_own_thinnest_wall()
    {
        var solid = Solid.Union(Shape.Cylinder(0.2, 2), Shape.Cylinder(0.3, 2).Moved(3, 0, 0), Shape.Cylinder(1, 2).Moved(6, 0, 0));
        var mesh = Meshed(solid);
        var found = WallMeasure.ThinnestByLabel(solid, mesh, 1, p => p.Z > 0.9 ? -1 : (int)Math.Round(p.X / 3));
        Assert.Equal([0, 1], found.Keys);
        Assert.Equal(0.4, found[0].ThicknessMm, 5e-3);
        Assert.Equal(0.6, found[1].ThicknessMm, 5e-3);
    }

    private static Mesh Meshed(Solid solid) => Mesher.Run(solid, MeshSettings.Preview, stop: TestContext.Current.CancellationToken).Mesh;

    [Fact]
    public void A_feather_edge_counts_only_within_the_widest_wedge()
    {
        // A wedge of 30 degrees.
        var solid = Shape.Extruded([(0, 0), (3, 0), (3, 3 * Math.Tan(Math.PI / 6))], 2);
        var mesh = Meshed(solid);
        Assert.True(WallMeasure.Thinnest(solid, mesh, 0.5)!.Value.ThicknessMm < 0.1);
        Assert.Null(WallMeasure.Thinnest(solid, mesh, 0.5, widestWedge: Math.PI / 8));
    }

    private static Body Felt(string name, Solid solid) => new(name, solid, ProbeSurface.Of(solid, Meshed(solid), 0.1));

    private static Solid PlanesOfBox(double x, double y, double z) => Shape.Faceted(
        [(Vec3.UnitX, x), (-Vec3.UnitX, x), (Vec3.UnitY, y), (-Vec3.UnitY, y), (Vec3.UnitZ, z), (-Vec3.UnitZ, z)],
        Bounds.Around(x, y, z));

    private static Body BallBody(string name, double radius)
    {
        var solid = Shape.Ball(radius);
        return new Body(name, solid, ProbeSurface.Of(solid, HandMadeMeshes.Ball(radius, 24), 0.1));
    }

    private static (Solid Solid, Mesh Mesh) Named(string name) => name switch
    {
        "torus 1.9 0.4" => (Shape.Torus(1.9, 0.4), HandMadeMeshes.Torus(1.9, 0.4, 180, 72)),
        "torus 3 0.4" => (Shape.Torus(3, 0.4), HandMadeMeshes.Torus(3, 0.4, 180, 72)),
        "ball 2.5" => (Shape.Ball(2.5), HandMadeMeshes.Ball(2.5, 90)),
        "cone 1.5 x 2" => (Shape.Cone(1.5, 0, 2), HandMadeMeshes.Frustum(1.5, 0, 2, 180)),
        "frustum 1.5 1.0 x 2" => (Shape.Cone(1.5, 1, 2), HandMadeMeshes.Frustum(1.5, 1, 2, 180)),
        "tube 1.8 0.9 x 3" => (Shape.Ring(0.45, 0.9, 3).Moved(0, 0, 1.5), HandMadeMeshes.Tube(0.9, 0.45, 3, 180)),
        "pin 0.8 x 3" => (Shape.Cylinder(0.4, 3).Moved(0, 0, 1.5), HandMadeMeshes.Frustum(0.4, 0.4, 3, 180)),
        _ => throw new ArgumentException(name, nameof(name)),
    };
}
