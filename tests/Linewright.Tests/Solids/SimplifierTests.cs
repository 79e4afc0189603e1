using System.Runtime.InteropServices;
using CsCheck;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using Linewright.Tests.Cases;

namespace Linewright.Tests.Solids;

public class SimplifierTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private const double Deviation = 0.005;

    [Theory]
    [MemberData(nameof(MeshingTests.Bounded), MemberType = typeof(MeshingTests))]
    public void Fewer_triangles_keep_the_surface_sound_and_within_the_deviation(string name)
    {
        var solid = NamedSolids.All[name];
        var fine = Mesher.Run(solid, new MeshSettings(0.05, 1, false), stop: Stop).Mesh;
        var simple = Simplifier.Run(solid, fine, Deviation, stop: Stop);
        Assert.True(simple.IsClean);
        TopologyReport before = Topology.Inspect(fine), after = Topology.Inspect(simple.Mesh);
        Assert.True(after.IsSound);
        Assert.Equal((before.Genus, before.Components), (after.Genus, after.Components));
        Assert.True(simple.Mesh.TriangleCount < fine.TriangleCount / 2);
        Assert.Empty(MeshIntersections.Find(simple.Mesh, stop: Stop));
        var worst = Math.Max(Deviation, Certificate.Measure(solid, fine, stop: Stop).DeviationMm);
        Assert.True(Certificate.Measure(solid, simple.Mesh, stop: Stop).DeviationMm <= worst + 1e-6);
    }

    [Fact]
    public void A_box_of_a_clasp_comes_out_with_its_corners_and_few_triangles()
    {
        var mesh = Mesher.Run(Shape.Box(14, 6, 3), new MeshSettings(0.05, Deviation, true), stop: Stop).Mesh;
        Assert.InRange(mesh.TriangleCount, 12, 30);
        Assert.Equal(1, MassProperties.Of(mesh).Volume / (14 * 6 * 3), 1e-6);
        for (var corner = 0; corner < 8; corner++)
        {
            var at = new Vec3((corner & 1) * 14 - 7, (corner >> 1 & 1) * 6 - 3, (corner >> 2) * 3 - 1.5);
            Assert.Contains(Enumerable.Range(0, mesh.VertexCount), v => (mesh.Vertex(v) - at).Length < 2e-5);
        }
    }

    [Fact]
    public void A_turned_box_with_a_hole_keeps_its_flat_faces()
    {
        var pose = Pose.TurnAbout(new Vec3(1, 0, 2), new Vec3(1, 2, 3), 0.7);
        var solid = Shape.Box(4, 3, 1).Minus(Shape.Cylinder(0.8, 3)).Moved(pose);
        var mesh = Mesher.Run(solid, new MeshSettings(0.05, Deviation, true), stop: Stop).Mesh;
        var back = mesh.Moved(pose.Inverse());

        // Beyond the hole only the six flat faces have vertices; a corner may fall short of them, within the deviation.
        var shortCorners = 0;
        for (var v = 0; v < back.VertexCount; v++)
        {
            var p = back.Vertex(v);
            if (Math.Sqrt(p.X * p.X + p.Y * p.Y) > 0.81)
            {
                var off = Math.Min(Math.Abs(Math.Abs(p.X) - 2), Math.Min(Math.Abs(Math.Abs(p.Y) - 1.5), Math.Abs(Math.Abs(p.Z) - 0.5)));
                Assert.True(off < Deviation);
                shortCorners += off > 1e-5 ? 1 : 0;
            }
        }

        Assert.InRange(shortCorners, 0, 8);
        Assert.Equal(1, MassProperties.Of(mesh, solid).Volume / (12 - Math.PI * 0.64), 5e-5);
    }

    [Theory]
    [MemberData(nameof(OnceFailed.Names), MemberType = typeof(OnceFailed))]
    public void What_once_failed_reaches_the_deviation_without_a_repeat(string name)
    {
        var outcome = Mesher.Run(OnceFailed.Solids[name], new MeshSettings(0.05, Deviation, true) { MostHalvings = 0 }, stop: Stop);
        Assert.Equal((MeshStatus.Meshed, 0), (outcome.Status, outcome.Repeats));
        Assert.True(Topology.Inspect(outcome.Mesh).IsSound);
        Assert.Empty(MeshIntersections.Find(outcome.Mesh, stop: Stop));
        Assert.True(outcome.Mesh.TriangleCount < outcome.FineTriangles / 50);
    }

    [Fact]
    public void A_larger_deviation_gives_fewer_triangles()
    {
        var solid = NamedSolids.All["filleted union"];
        var fine = Mesher.Run(solid, new MeshSettings(0.05, 1, false), stop: Stop).Mesh;
        var counts = new[] { 0.002, 0.005, 0.02 }.Select(d => Simplifier.Run(solid, fine, d, stop: Stop).Mesh.TriangleCount).ToArray();
        Assert.True(counts[0] > counts[1] && counts[1] > counts[2]);
    }

    [Fact]
    public void The_number_of_threads_changes_no_byte()
    {
        var solid = NamedSolids.All["filleted difference"];
        var fine = Mesher.Run(solid, new MeshSettings(0.03, 1, false), stop: Stop).Mesh;
        var one = Simplifier.Run(solid, fine, Deviation, threads: 1, stop: Stop).Mesh;
        var four = Simplifier.Run(solid, fine, Deviation, threads: 4, stop: Stop).Mesh;
        Assert.True(MemoryMarshal.AsBytes(one.Positions).SequenceEqual(MemoryMarshal.AsBytes(four.Positions)));
        Assert.True(one.Triangles.SequenceEqual(four.Triangles));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(double.NaN)]
    public void A_deviation_that_is_no_length_is_refused(double deviation)
        => Assert.Throws<ArgumentOutOfRangeException>(() => Simplifier.Run(Shape.Ball(1), HandMadeMeshes.Ball(1, 10), deviation, stop: Stop));

    [Fact]
    public void Random_solids_stay_sound_and_free_of_triangles_that_meet()
        => SolidRecipe.Any.Sample(StaysSound, iter: 60, threads: 1);

    [Fact]
    [Trait("Speed", "slow")]
    public void Many_random_solids_stay_sound_and_free_of_triangles_that_meet()
        => SolidRecipe.Any.Sample(StaysSound, iter: 400, threads: 1);

    private static bool StaysSound(SolidRecipe recipe)
    {
        var solid = recipe.Build();
        var fine = Mesher.Run(solid, new MeshSettings(0.1, 1, false), stop: Stop);
        if (fine.Status == MeshStatus.Empty)
        {
            return true;
        }

        var simple = Simplifier.Run(solid, fine.Mesh, 0.01, stop: Stop);
        TopologyReport before = Topology.Inspect(fine.Mesh), after = Topology.Inspect(simple.Mesh);
        return simple.IsClean && after.IsSound && (before.Genus, before.Components) == (after.Genus, after.Components)
            && MeshIntersections.Find(simple.Mesh, 1, stop: Stop).Count == 0
            && Certificate.Measure(solid, simple.Mesh, stop: Stop).DeviationMm <= Math.Max(0.01, fine.CertifiedDeviationMm) + 1e-6;
    }
}
