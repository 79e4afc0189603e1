using System.Runtime.Intrinsics;
using CsCheck;
using Linewright.Pictures.Rays;
using Linewright.Solids.Meshing;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;
using Linewright.Stones;

namespace Linewright.Tests.Pictures;

public class RaysTests
{
    [Fact]
    public void The_tree_finds_what_trying_every_triangle_finds()
    {
        var mesh = Bumpy(40);
        Pose[] places = [Pose.Identity, Pose.TurnAbout(new Vec3(1, 2, 0), new Vec3(1, 1, 0), 0.7), Pose.Mirror(Vec3.UnitX) with { Origin = new Vec3(0, 0, 3) }];
        using var forest = new ThingForest([mesh], [.. places.Select(p => (0, p))], [], [], 1);
        var random = new Random(3);
        var (met, missed) = (0, 0);
        for (var i = 0; i < 2000; i++)
        {
            var (from, way) = Ray(random);
            var hit = forest.Tree.Nearest(new Float3(from), new Float3(way), 1e30f, -1, false);
            var (distance, thing) = places.Select((p, k) => (Distance: ByHand(mesh, p.Inverse().Point(from), p.Inverse().Direction(way)), k)).Min();
            if (double.IsPositiveInfinity(distance))
            {
                missed++;
                Assert.True(hit.Thing < 0 || IsNearEdge(mesh, places[hit.Thing], from, way, hit), "met nothing there is");
                continue;
            }

            met++;
            Assert.True(Math.Abs(distance - hit.Distance) < 1e-4 * (1 + distance), FormattableString.Invariant($"{distance} against {hit.Distance} of {thing}"));
            Assert.Equal(hit.Thing >= 0, forest.Tree.Nearest(new Float3(from), new Float3(way), 1e30f, -1, true).Thing >= 0);
        }

        Assert.True(met > 300 && missed > 300, FormattableString.Invariant($"{met} met, {missed} missed"));
    }

    [Fact]
    public void Threads_do_not_change_the_tree()
    {
        var mesh = Bumpy(120);
        using var one = WideTree.Over(mesh, 1);
        using var four = WideTree.Over(mesh, 4);
        Assert.Equal((one.NodeCount, one.BlockCount), (four.NodeCount, four.BlockCount));
        Assert.InRange(mesh.TriangleCount / (double)one.BlockCount, 4, 8);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(200)]
    public unsafe void Every_triangle_lies_in_one_leaf_and_in_all_boxes_above_it(int rings)
    {
        var mesh = Bumpy(Math.Max(3, rings));
        mesh = rings == 1 ? new Mesh(mesh.Positions.ToArray(), mesh.Triangles[..3].ToArray()) : mesh;
        using var tree = WideTree.Over(mesh, 2);
        var seen = new int[mesh.TriangleCount];
        var levels = 0;
        Look(0, new Bounds(new Vec3(-9, -9, -9), new Vec3(9, 9, 9)), 1);
        Assert.All(seen, times => Assert.Equal(1, times));
        Assert.InRange(levels, 1, WideTree.MostLevels);
        Assert.True(tree.NodeCount <= 1 + mesh.TriangleCount / 20, FormattableString.Invariant($"{tree.NodeCount} nodes"));

        void Look(int number, Bounds above, int level)
        {
            levels = Math.Max(levels, level);
            var node = tree.Nodes + number;
            for (var i = 0; i < TreeNode.Width && node->LowX[i] <= node->HighX[i]; i++)
            {
                var box = new Bounds(new Vec3(node->LowX[i], node->LowY[i], node->LowZ[i]), new Vec3(node->HighX[i], node->HighY[i], node->HighZ[i]));
                Assert.Equal(above.Join(box), above);
                if (node->Child[i] >= 0)
                {
                    Look(node->Child[i], box, level + 1);
                    continue;
                }

                var block = tree.Blocks + ~node->Child[i];
                for (var k = 0; k < TreeNode.Width; k++)
                {
                    if (block->EdgeUX[k] != 0 || block->EdgeUY[k] != 0 || block->EdgeUZ[k] != 0)
                    {
                        var triangle = block->Triangle[k];
                        seen[triangle]++;
                        Assert.All(Enumerable.Range(0, 3), corner => Assert.True(box.Contains(mesh.Vertex(mesh.Triangles[3 * triangle + corner]))));
                    }
                }
            }
        }
    }

    [Fact]
    public void Triangles_that_shrink_without_end_make_no_tree_too_deep_for_the_stack()
    {
        // A corner closer to the origin by a quarter each time, a thousand of each size: cuts by surface peel off one size after another.
        var positions = new List<float>();
        for (var i = 0; i < 60_000; i++)
        {
            var size = MathF.Pow(2, -(i / 1000));
            positions.AddRange([size, size, size * (1 + i % 1000 * 1e-3f), 1.1f * size, size, size * (1 + i % 1000 * 1e-3f), size, 1.1f * size, size * (1 + i % 1000 * 1e-3f)]);
        }

        var mesh = new Mesh([.. positions], [.. Enumerable.Range(0, positions.Count / 3)]);
        using var tree = WideTree.Over(mesh, 2);
        Assert.InRange(Levels(tree, 0), 4, WideTree.MostLevels);
        using var forest = new ThingForest([mesh], [(0, Pose.Identity)], [], [], 2);
        var random = new Random(4);
        for (var i = 0; i < 300; i++)
        {
            var from = new Vec3(0, 0, -1);
            var target = mesh.Vertex(3 * random.Next(60_000)) * 1.04;
            var hit = forest.Tree.Nearest(new Float3(from), new Float3((target - from).Normalised()), 1e30f, -1, false);
            var expected = ByHand(mesh, from, (target - from).Normalised());
            Assert.True(double.IsPositiveInfinity(expected) ? hit.Thing < 0 : Math.Abs(expected - hit.Distance) < 1e-4 * expected,
                FormattableString.Invariant($"{hit.Distance} against {expected}"));
        }
    }

    private static unsafe int Levels(WideTree tree, int number)
    {
        var node = tree.Nodes + number;
        var below = 0;
        for (var i = 0; i < TreeNode.Width && node->LowX[i] <= node->HighX[i]; i++)
        {
            below = node->Child[i] >= 0 ? Math.Max(below, Levels(tree, node->Child[i])) : below;
        }

        return 1 + below;
    }

    [Fact]
    public unsafe void The_nearest_box_comes_next_and_the_others_wait_farthest_lowest()
        => Gen.Select(Gen.Float[0, 1000].Array[TreeNode.Width], Gen.UInt[1, 255]).Sample((entries, met) =>
        {
            using var node = new AlignedBlock<TreeNode>(1);
            for (var i = 0; i < TreeNode.Width; i++)
            {
                node.Pointer->Child[i] = i % 2 == 0 ? i : ~i;
            }

            ulong* keys = stackalloc ulong[TreeNode.Width], stack = stackalloc ulong[TreeNode.Width];
            var top = stack;
            List<int> order = [NodeOrder.Next((byte*)node.Pointer, met, Vector256.Create(entries), keys, ref top)];
            while (top > stack)
            {
                top--;
                order.Add((int)*top);
                Assert.Equal(entries[Place(order[^1])], NodeOrder.Entry(*top));
            }

            var places = order.ConvertAll(Place);
            Assert.Equal(met, (uint)places.Sum(place => 1 << place));
            Assert.Equal(places.Select(place => entries[place]).Order(), places.Select(place => entries[place]));

            static int Place(int child) => child >= 0 ? child : ~child;
        });

    [Fact]
    public void A_turn_in_vectors_is_the_turn_in_numbers()
        => Gen.Double[-3, 3].Array[9].Sample(x =>
        {
            var pose = Pose.TurnAbout(new Vec3(x[0], x[1], x[2]), new Vec3(x[3], x[4], 4), x[5]);
            Float3 point = new((float)x[6], (float)x[7], (float)x[8]), inwards = new Turn(pose).PointInwards(point);
            var wide = new WideTurn(pose).PointInwards(Vector128.Create(point.X, point.Y, point.Z, 0));
            Assert.Equal(inwards.X, wide[0], 1e-5f);
            Assert.Equal(inwards.Y, wide[1], 1e-5f);
            Assert.Equal(inwards.Z, wide[2], 1e-5f);
        });

    [Fact]
    public unsafe void All_widths_find_the_same_facets_and_a_body_has_no_gaps()
    {
        // The second has a girdle of 64 facets, which most rays need not look at; its bare planes are a prism's.
        foreach (var shape in new[] { Brilliant.Of(57, 34, 41), RoundBrilliant.Cut(2, BrilliantProportions.Modern with { GirdleSides = 64 }).Stone!.Body, Prism(40) })
        {
            var body = new FacetBody(shape);
            var random = new Random(9);
            var hits = 0;
            fixed (float* numbers = body.Numbers)
            {
                var planes = body.At(numbers);
                for (var i = 0; i < 5000; i++)
                {
                    var (from, way) = Ray(random);
                    Float3 o = new(from), d = new(i % 5 == 0 ? (way with { Z = 0 }).Normalised() : way);
                    var plain = FacetTracing.EnterPlain(planes, o, d);
                    foreach (var wide in new[] { FacetEntry.Enter8(planes, o, d), FacetEntry.Enter16(planes, o, d) })
                    {
                        Assert.Equal(plain.Facet >= 0, wide.Facet >= 0);
                        if (plain.Facet >= 0)
                        {
                            Assert.Equal(plain.Distance, wide.Distance, 1e-4f);
                        }
                    }

                    if (plain.Facet < 0)
                    {
                        continue;
                    }

                    hits++;
                    var inside = o + d * (plain.Distance + 1e-4f);
                    var a = FacetTracing.LeavePlain(planes, inside, d);
                    var b = FacetExit.Leave8(planes, inside, d);
                    var c = FacetExit.Leave16(planes, inside, d);
                    Assert.InRange(a.Distance, -1e-3f, 2 * body.Radius);
                    Assert.Equal(a.Distance, b.Distance, 2e-4f);
                    Assert.Equal(a.Distance, c.Distance, 2e-4f);
                }
            }

            Assert.InRange(hits, 100, 5000);
        }
    }

    [Fact]
    public void A_ray_along_a_face_beside_the_body_passes_by()
    {
        var box = ConvexPolyhedron.FromPlanes(
        [
            new(Vec3.UnitX, 1), new(-Vec3.UnitX, 1), new(Vec3.UnitY, 1), new(-Vec3.UnitY, 1), new(Vec3.UnitZ, 1), new(-Vec3.UnitZ, 1),
        ]).Body!;
        using var forest = new ThingForest([], [], [box], [(0, Pose.Identity)], 1);
        Assert.True(forest.Tree.Nearest(new Float3(-5, 0, 1.01f), new Float3(1, 0, 0), 1e30f, -1, false).Thing < 0);
        Assert.Equal(4, forest.Tree.Nearest(new Float3(-5, 0, 0.99f), new Float3(1, 0, 0), 1e30f, -1, false).Distance, 1e-5f);
        Assert.True(forest.Tree.Nearest(new Float3(-5, 0, 0.99f), new Float3(1, 0, 0), 1e30f, 0, false).Thing < 0);
    }

    [Fact]
    public void Rounded_faces_are_smooth_and_edges_are_not()
    {
        var ball = TestScenes.Ball(24, 1);
        var normals = SmoothNormals.Of(ball);
        for (var i = 0; i < ball.TriangleCount; i++)
        {
            var corner = new Float3(ball.Vertex(ball.Triangles[3 * i]));
            Assert.True(Float3.Dot(normals[i].A, corner) > 0.998f);
        }

        var box = ConvexPolyhedron.FromPlanes(
        [
            new(Vec3.UnitX, 1), new(-Vec3.UnitX, 1), new(Vec3.UnitY, 1), new(-Vec3.UnitY, 1), new(Vec3.UnitZ, 1), new(-Vec3.UnitZ, 1),
        ]).Body!.ToMesh();
        Assert.All(SmoothNormals.Of(box), n => Assert.True(Float3.Dot(n.A, n.Flat) > 0.9999f && Float3.Dot(n.C, n.Flat) > 0.9999f));
    }

    // From a shell of radius 4 towards somewhere near the middle.
    /// <summary>Upright sides and two lids: all but the lids may be left for later.</summary>
    private static ConvexPolyhedron Prism(int sides)
        => ConvexPolyhedron.FromPlanes(
        [
            new(Vec3.UnitZ, 0.4), new(-Vec3.UnitZ, 0.4),
            .. Enumerable.Range(0, sides).Select(i => new Plane(new Vec3(Math.Cos(i * Math.Tau / sides), Math.Sin(i * Math.Tau / sides), 0), 1)),
        ]).Body!;

    private static (Vec3 From, Vec3 Way) Ray(Random random)
    {
        Vec3 Any() => new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5).Normalised();
        var from = Any() * 4;
        return (from, (Any() * (1.6 * random.NextDouble()) - from).Normalised());
    }

    private static Mesh Bumpy(int rings)
    {
        var ball = TestScenes.Ball(rings, 0.8);
        var positions = ball.Positions.ToArray();
        for (var i = 0; i < positions.Length; i += 3)
        {
            var bump = 1 + 0.12f * MathF.Sin(9 * positions[i]) * MathF.Cos(7 * positions[i + 1]);
            (positions[i], positions[i + 1], positions[i + 2]) = (positions[i] * bump, positions[i + 1] * bump, positions[i + 2] * bump);
        }

        return new Mesh(positions, ball.Triangles.ToArray());
    }

    // Möller and Trumbore (1997) in double precision.
    private static double ByHand(Mesh mesh, Vec3 o, Vec3 d)
    {
        var nearest = double.PositiveInfinity;
        for (var i = 0; i < mesh.TriangleCount; i++)
        {
            var a = mesh.Vertex(mesh.Triangles[3 * i]);
            Vec3 u = mesh.Vertex(mesh.Triangles[3 * i + 1]) - a, v = mesh.Vertex(mesh.Triangles[3 * i + 2]) - a;
            var p = d.Cross(v);
            var over = 1 / u.Dot(p);
            var s = o - a;
            var q = s.Cross(u);
            double x = s.Dot(p) * over, y = d.Dot(q) * over, t = v.Dot(q) * over;
            if (x >= 0 && y >= 0 && x + y <= 1 && t > 0)
            {
                nearest = Math.Min(nearest, t);
            }
        }

        return nearest;
    }

    // A ray that grazes the outline within rounding may be met by one and missed by the other.
    private static bool IsNearEdge(Mesh mesh, Pose place, Vec3 from, Vec3 way, Encounter hit)
        => double.IsFinite(ByHand(mesh, place.Inverse().Point(from + way.Cross(Vec3.UnitZ) * 1e-5), place.Inverse().Direction(way)))
            || double.IsFinite(ByHand(mesh, place.Inverse().Point(from - way.Cross(Vec3.UnitZ) * 1e-5), place.Inverse().Direction(way)))
            || hit.U < 1e-4 || hit.V < 1e-4 || hit.U + hit.V > 1 - 1e-4;
}
