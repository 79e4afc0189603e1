using CsCheck;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

public class ShapesTests
{
    private static readonly Gen<Vec3> Points = Gen.Select(
        Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3], (x, y, z) => new Vec3(x, y, z));

    // The generator likes round numbers; shifted, they lie on no shape's axis, edge or face.
    private static readonly Gen<Vec3> General = Points.Select(p => p + new Vec3(0.01371, 0.02713, 0.04159));

    public static TheoryData<string> Names => NamedSolids.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void A_distance_never_changes_faster_than_the_point_moves(string name)
    {
        var solid = NamedSolids.All[name];
        Gen.Select(Points, Points, Gen.Double[0, 1]).Sample((a, b, near) =>
        {
            // Half of the pairs lie close together, where a wrong branch shows.
            var other = near < 0.5 ? b : a + b * 1e-3;
            var change = Math.Abs(solid.Distance(a) - solid.Distance(other));
            Assert.True(change <= (a - other).Length + 1e-9, FormattableString.Invariant($"{a} {other}: {change} in {(a - other).Length}"));
        }, iter: 2000);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_gradient_is_the_slope_of_the_distance(string name)
    {
        const double Step = 1e-5;
        var solid = NamedSolids.All[name];
        var compared = 0;
        General.Sample(p =>
        {
            var (distance, gradient) = solid.Sense(p);
            Assert.Equal(solid.Distance(p), distance, 1e-12);
            Span<double> found = [gradient.X, gradient.Y, gradient.Z];
            ReadOnlySpan<Vec3> axes = [Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ];
            for (var k = 0; k < 3; k++)
            {
                // Where the slopes on both sides differ the point straddles a ridge, and there is no gradient.
                double after = solid.Distance(p + axes[k] * Step), before = solid.Distance(p - axes[k] * Step);
                if (Math.Abs(after + before - 2 * distance) < 1e-8)
                {
                    Assert.Equal((after - before) / (2 * Step), found[k], 2e-4);
                    Interlocked.Increment(ref compared);
                }
            }
        }, iter: 500);
        Assert.True(compared > 500, FormattableString.Invariant($"only {compared} slopes were comparable"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_batch_gives_the_bits_of_a_single_point_and_single_precision_follows_double(string name)
    {
        var solid = NamedSolids.All[name];
        var (x, y, z) = Cloud(17, 512);
        float[] d = new float[512], e = new float[512], gx = new float[512], gy = new float[512], gz = new float[512];
        var arena = new Arena();
        solid.Distances(x, y, z, d, arena);
        solid.Gradients(x, y, z, e, gx, gy, gz, arena);
        for (var i = 0; i < d.Length; i++)
        {
            Assert.Equal(BitConverter.SingleToInt32Bits(solid.DistanceSingle(x[i], y[i], z[i])), BitConverter.SingleToInt32Bits(d[i]));
            Assert.Equal(BitConverter.SingleToInt32Bits(d[i]), BitConverter.SingleToInt32Bits(e[i]));
            Assert.Equal(solid.Distance(new Vec3(x[i], y[i], z[i])), d[i], 3e-6);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_batch_of_gradients_follows_the_gradient_in_double(string name)
    {
        var solid = NamedSolids.All[name];
        var (x, y, z) = Cloud(18, 512);
        float[] d = new float[512], gx = new float[512], gy = new float[512], gz = new float[512];
        solid.Gradients(x, y, z, d, gx, gy, gz, new Arena());
        var apart = 0;
        for (var i = 0; i < d.Length; i++)
        {
            var gradient = solid.Sense(new Vec3(x[i], y[i], z[i])).Gradient;
            apart += (gradient - new Vec3(gx[i], gy[i], gz[i])).Length > 1e-3 ? 1 : 0;
        }

        // Rounding may choose the other side of a ridge now and then.
        Assert.InRange(apart, 0, 2);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Pruning_for_a_ball_changes_no_bit_inside_it(string name)
    {
        var solid = NamedSolids.All[name];
        var random = new Random(5);
        for (var round = 0; round < 60; round++)
        {
            var centre = new Vec3(random.NextDouble() * 6 - 3, random.NextDouble() * 6 - 3, random.NextDouble() * 6 - 3);
            var radius = 0.02 + 0.8 * random.NextDouble() * random.NextDouble();
            var near = solid.Near((float)centre.X, (float)centre.Y, (float)centre.Z, (float)radius, out var at);
            Assert.Equal(solid.DistanceSingle((float)centre.X, (float)centre.Y, (float)centre.Z), at);
            for (var i = 0; i < 60; i++)
            {
                var way = new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5).Normalised();
                var p = centre + way * (radius * 0.999 * Math.Cbrt(random.NextDouble()));
                float x = (float)p.X, y = (float)p.Y, z = (float)p.Z;
                Assert.Equal(BitConverter.SingleToInt32Bits(solid.DistanceSingle(x, y, z)), BitConverter.SingleToInt32Bits(near.DistanceSingle(x, y, z)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_bounds_hold_every_point_inside(string name)
    {
        var solid = NamedSolids.All[name];
        Points.Sample(p => solid.Distance(p) > 0 || solid.Bounds.Grown(1e-9).Contains(p), iter: 3000);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_complement_turns_the_sign_and_twice_is_the_same(string name)
    {
        var solid = NamedSolids.All[name];
        var complement = solid.Complement();
        var back = complement.Complement();
        Points.Sample(p => complement.Distance(p) == -solid.Distance(p) && back.Distance(p) == solid.Distance(p), iter: 500);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Moving_a_solid_moves_its_distance(string name)
    {
        var solid = NamedSolids.All[name];
        foreach (var pose in new[] { HandMadeMeshes.Awry, Pose.Mirror(new Vec3(1, 2, 2)).Then(Pose.Move(0.1, -0.2, 0.3)) })
        {
            var moved = solid.Moved(pose);
            Points.Sample(p => Math.Abs(moved.Distance(pose.Point(p)) - solid.Distance(p)) < 1e-9, iter: 300);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void On_the_surface_itself_the_gradient_points_outwards(string name)
    {
        // Points of the surface in single precision often hit a branch's tie exactly, where a sign may slip.
        var solid = NamedSolids.All[name];
        var (x, y, z) = Cloud(19, 1024);
        float[] d = new float[1024], gx = new float[1024], gy = new float[1024], gz = new float[1024];
        var arena = new Arena();
        for (var round = 0; round < 12; round++)
        {
            solid.Gradients(x, y, z, d, gx, gy, gz, arena);
            for (var i = 0; i < d.Length; i++)
            {
                var square = Math.Max(gx[i] * gx[i] + gy[i] * gy[i] + gz[i] * gz[i], 0.25f);
                (x[i], y[i], z[i]) = (x[i] - gx[i] * d[i] / square, y[i] - gy[i] * d[i] / square, z[i] - gz[i] * d[i] / square);
            }
        }

        solid.Gradients(x, y, z, d, gx, gy, gz, arena);
        var compared = 0;
        for (var i = 0; i < d.Length; i++)
        {
            // Edges have no normal: the gradients a little off the point must agree among themselves.
            Vec3 p = new(x[i], y[i], z[i]), nearby = solid.Sense(p + new Vec3(1e-5, 2e-5, 3e-5)).Gradient;
            Vec3[] offsets = [new(-1e-5, -2e-5, -3e-5), new(3e-5, -2e-5, 1e-5), new(-3e-5, 2e-5, -1e-5), new(-2e-5, 1e-5, 2e-5), new(2e-5, -1e-5, -2e-5)];
            if (Math.Abs(d[i]) < 1e-6 && Array.TrueForAll(offsets, o => solid.Sense(p + o).Gradient.Dot(nearby) > 0.99))
            {
                Assert.True(nearby.Dot(new Vec3(gx[i], gy[i], gz[i])) > 0.9, FormattableString.Invariant($"{p}: {gx[i]} {gy[i]} {gz[i]}"));
                Assert.True(nearby.Dot(solid.Sense(p).Gradient) > 0.9, FormattableString.Invariant($"{p}"));
                compared++;
            }
        }

        Assert.True(compared > 40, FormattableString.Invariant($"only {compared} points reached the surface"));
    }

    [Fact]
    public void The_gradient_has_length_one_on_flat_faces_too()
    {
        // Where a branch ties on the surface itself, only one of its sides may count.
        foreach (var (name, p, normal) in new[]
        {
            ("box", new Vec3(1, 0.1, 0.2), Vec3.UnitX), ("box", new Vec3(0.3, -0.75, 0.2), -Vec3.UnitY), ("cylinder", new Vec3(0.2, 0.3, 0.8), Vec3.UnitZ),
            ("ring", new Vec3(1.1, 0, -0.45), -Vec3.UnitZ), ("plate", new Vec3(0.1, 0.2, 0.35), Vec3.UnitZ), ("ring", new Vec3(0.8, 0, 0.1), -Vec3.UnitX),
        })
        {
            Assert.True((NamedSolids.All[name].Sense(p).Gradient - normal).Length < 1e-9, name);
        }
    }

    [Fact]
    public void A_point_level_with_a_notch_lies_on_the_right_side()
    {
        // Found by random points: the notch's height was compared once as 0.2 and once as 0.9 + (0.2 - 0.9).
        var solid = NamedSolids.All["extruded rounded polygon"];
        Assert.Equal(solid.Distance(new Vec3(0, 0.2 - 1e-9, -0.03)), solid.Distance(new Vec3(0, 0.2, -0.03)), 1e-6);
    }

    // Only these promise an exact distance: ball, wire, boxes, extrusions and revolutions of exact outlines.
    [Theory]
    [InlineData("ball")]
    [InlineData("capsule")]
    [InlineData("tapered capsule")]
    [InlineData("torus")]
    [InlineData("short torus arc")]
    [InlineData("long torus arc")]
    [InlineData("half torus arc")]
    [InlineData("box")]
    [InlineData("rounded box")]
    [InlineData("box between")]
    [InlineData("cylinder")]
    [InlineData("rounded cylinder")]
    [InlineData("rod")]
    [InlineData("frustum")]
    [InlineData("cone")]
    [InlineData("ring")]
    [InlineData("rounded ring")]
    [InlineData("plate")]
    [InlineData("extruded polygon")]
    [InlineData("extruded rounded polygon")]
    [InlineData("revolved polygon")]
    [InlineData("shrunk box")]
    [InlineData("turned")]
    [InlineData("mirrored")]
    public void An_exact_distance_outside_is_that_of_the_nearest_point_of_the_body(string name)
    {
        // The distance says how far the body is: stepping that far towards it must reach it, in some direction.
        // Walk down the gradient once; for an exact distance that one step ends on the surface.
        var solid = NamedSolids.All[name];
        var reached = 0;
        General.Sample(p =>
        {
            var (distance, gradient) = solid.Sense(p);
            if (distance > 1e-3)
            {
                Assert.Equal(1, gradient.Length, 1e-6);
                Assert.Equal(0, solid.Distance(p - gradient * distance), 1e-6);
                Interlocked.Increment(ref reached);
            }
        }, iter: 600);
        Assert.True(reached > 100);
    }

    [Fact]
    public void Exact_shapes_agree_with_a_search_over_their_surface()
    {
        // The nearest of many points written down from the shapes' own parametric forms, none from a distance.
        Solid box = Shape.Box(2, 1.5, 1), torus = Shape.Torus(1.5, 0.4), can = Shape.Cylinder(0.9, 1.6);
        var boxPoints = new List<Vec3>();
        var torusPoints = new List<Vec3>();
        var canPoints = new List<Vec3>();
        const int N = 60;
        for (var i = 0; i <= N; i++)
        {
            for (var j = 0; j <= N; j++)
            {
                double u = 2.0 * i / N - 1, v = 2.0 * j / N - 1, a = Math.PI * u, b = Math.PI * v;
                boxPoints.AddRange([new(u, v * 0.75, 0.5), new(u, v * 0.75, -0.5), new(u, 0.75, v / 2), new(u, -0.75, v / 2), new(1, u * 0.75, v / 2), new(-1, u * 0.75, v / 2)]);
                torusPoints.Add(new((1.5 + 0.4 * Math.Cos(b)) * Math.Cos(a), (1.5 + 0.4 * Math.Cos(b)) * Math.Sin(a), 0.4 * Math.Sin(b)));
                double r = (v + 1) * 0.45;
                canPoints.AddRange([new(0.9 * Math.Cos(a), 0.9 * Math.Sin(a), v * 0.8), new(r * Math.Cos(a), r * Math.Sin(a), 0.8), new(r * Math.Cos(a), r * Math.Sin(a), -0.8)]);
            }
        }

        foreach (var (solid, surface) in new[] { (box, boxPoints), (torus, torusPoints), (can, canPoints) })
        {
            Points.Sample(p =>
            {
                // Points of the surface lie within 0.13 mm of each other, so the nearest is short by at most h2 / 2d.
                var nearest = surface.Min(q => (p - q).Length);
                var distance = Math.Abs(solid.Distance(p));
                Assert.True(distance <= nearest + 1e-9);
                Assert.True(nearest <= Math.Sqrt(distance * distance + 0.13 * 0.13) + 0.02);
            }, iter: 60);
        }
    }

    [Fact]
    public void The_sign_says_inside_as_the_shapes_own_inequalities_do()
    {
        General.Sample(p =>
        {
            double r = Math.Sqrt(p.X * p.X + p.Y * p.Y), z = p.Z;
            Assert.Equal(p.Dot(p) < 1.69, NamedSolids.All["ball"].Distance(p) < 0);
            Assert.Equal(Math.Abs(p.X) < 1 && Math.Abs(p.Y) < 0.75 && Math.Abs(z) < 0.5, NamedSolids.All["box"].Distance(p) < 0);
            Assert.Equal(r < 0.9 && Math.Abs(z) < 0.8, NamedSolids.All["cylinder"].Distance(p) < 0);
            Assert.Equal(z > 0 && z < 1.5 && r < 1.2 - 0.7 * z / 1.5, NamedSolids.All["frustum"].Distance(p) < 0);
            Assert.Equal(z > 0 && z < 1.5 && r < 1.2 * z / 1.5, NamedSolids.All["cone on its tip"].Distance(p) < 0);
            Assert.Equal(r > 0.8 && r < 1.5 && Math.Abs(z) < 0.45, NamedSolids.All["ring"].Distance(p) < 0);
            Assert.Equal((r - 1.5) * (r - 1.5) + z * z < 0.16, NamedSolids.All["torus"].Distance(p) < 0);
            Assert.Equal(Math.Abs(p.X) + Math.Abs(p.Y) + Math.Abs(z) < 1.1 * Math.Sqrt(3), NamedSolids.All["facets"].Distance(p) < 0);
        }, iter: 3000);
    }

    [Fact]
    public void The_axis_inside_a_cone_is_no_surface()
    {
        foreach (var name in new[] { "frustum", "cone", "cone on its tip" })
        {
            // On the axis the nearest surface is the slanted side or an end, never the axis itself.
            Assert.True(NamedSolids.All[name].Distance(new Vec3(0, 0, 0.75)) < -0.3, name);
        }
    }

    [Fact]
    public void A_fillet_has_the_radius_asked_for_at_its_tightest()
    {
        // Two walls x = 0 and y = 0, material in x < 0 or y < 0. On the bisector the fillet is tightest; by symmetry the
        // point with distance 0 there is k / 4 off both walls, k = radius times the square root of two.
        var corner = Solid.Union(
            Blend.Fillet(0.2), Shape.HalfSpace(Vec3.Zero, Vec3.UnitX), Shape.HalfSpace(Vec3.Zero, Vec3.UnitY));
        var off = 0.2 * Math.Sqrt(2) / 4;
        Assert.Equal(0, corner.Distance(new Vec3(off, off, 0)), 1e-6);

        // Radius from three points of the outline close to the bisector: sagitta = chord2 / 8 r.
        double u = 0.02, v = off, w = off;
        for (var i = 0; i < 60; i++)
        {
            w -= corner.Distance(new Vec3(v + w - off - u, v + w - off + u, 0)) / 1.5;
        }

        var sagitta = (w - off) * Math.Sqrt(2);
        var halfChord = u * Math.Sqrt(2);
        Assert.Equal(0.2, (halfChord * halfChord + sagitta * sagitta) / (2 * sagitta), 0.005);
    }

    [Fact]
    public void A_chamfer_has_the_legs_asked_for()
    {
        var corner = Solid.Union(
            Blend.Chamfer(0.3), Shape.HalfSpace(Vec3.Zero, Vec3.UnitX), Shape.HalfSpace(Vec3.Zero, Vec3.UnitY));
        Assert.Equal(0, corner.Distance(new Vec3(0.29, 0.01, 0)), 1e-6);
        Assert.Equal(0, corner.Distance(new Vec3(0.15, 0.15, 0)), 1e-6);
        Assert.True(corner.Distance(new Vec3(0.31, 0.01, 0)) > 0);
    }

    [Fact]
    public void A_shell_is_as_thick_as_asked_for()
    {
        var shell = Shape.Ball(2).Shell(0.3);
        Assert.Equal(0, shell.Distance(new Vec3(1.7, 0, 0)), 1e-9);
        Assert.Equal(-0.15, shell.Distance(new Vec3(0, 1.85, 0)), 1e-9);
        Assert.True(shell.Distance(Vec3.Zero) > 1.6);
    }

    [Fact]
    public void Sizes_that_make_no_solid_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Shape.Ball(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Shape.Box(1, 1, 1, 0.6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Shape.Cylinder(1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Shape.Ring(2, 1, 1));
        Assert.Throws<ArgumentException>(() => Shape.Extruded([(0, 0), (1, 0)], 1));
    }

    private static (float[] X, float[] Y, float[] Z) Cloud(int seed, int count)
    {
        var random = new Random(seed);
        float[] x = new float[count], y = new float[count], z = new float[count];
        for (var i = 0; i < count; i++)
        {
            (x[i], y[i], z[i]) = (random.NextSingle() * 6 - 3, random.NextSingle() * 6 - 3, random.NextSingle() * 6 - 3);
        }

        return (x, y, z);
    }
}
