using System.Runtime.InteropServices;
using CsCheck;
using Linewright.Solids.Measures;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

public class MeshingTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static readonly MeshSettings Fine = new(0.05, 0.05, false);

    public static TheoryData<string> Bounded => [.. NamedSolids.All.Where(pair => pair.Value.Bounds.IsFinite).Select(pair => pair.Key)];

    [Theory]
    [MemberData(nameof(Bounded))]
    public void Every_kind_of_solid_gives_a_sound_surface_whose_triangles_never_meet(string name)
    {
        var outcome = Mesher.Run(NamedSolids.All[name], Fine, stop: Stop);
        Assert.Equal(MeshStatus.Meshed, outcome.Status);
        Assert.True(Topology.Inspect(outcome.Mesh).IsSound);
        Assert.Empty(MeshIntersections.Find(outcome.Mesh, stop: Stop));
        Assert.True(outcome.CertifiedDeviationMm <= 0.05);
    }

    [Theory]
    [InlineData("ball", 0, 1)]
    [InlineData("torus", 1, 1)]
    [InlineData("ring", 1, 1)]
    [InlineData("rounded box", 0, 1)]
    [InlineData("shell", 0, 2)] // outside and inside are two surfaces
    [InlineData("difference", 1, 1)]
    public void The_genus_is_that_of_the_shape(string name, int genus, int components)
    {
        var report = Topology.Inspect(Mesher.Run(NamedSolids.All[name], Fine, stop: Stop).Mesh);
        Assert.Equal((genus, components), (report.Genus, report.Components));
        Assert.Equal(2 * components - 2 * genus, report.EulerCharacteristic); // Source: Euler's formula, V - E + F = 2 (c - g)
    }

    [Fact]
    public void Two_linked_rings_have_two_handles_and_a_plate_with_three_holes_three()
    {
        var eight = Solid.Union(Blend.Fillet(0.1), Shape.Torus(1, 0.3), Shape.Torus(1, 0.3).Moved(1.9, 0, 0));
        Assert.Equal(2, Topology.Inspect(Mesher.Run(eight, Fine, stop: Stop).Mesh).Genus);
        var hole = Shape.Cylinder(0.4, 3);
        var plate = Shape.Box(4, 1.5, 0.6).Minus(hole.Moved(-1.2, 0, 0), hole, hole.Moved(1.2, 0, 0));
        Assert.Equal(3, Topology.Inspect(Mesher.Run(plate, Fine, stop: Stop).Mesh).Genus);
    }

    [Fact]
    public void Volumes_agree_with_closed_formulas()
    {
        Agree(Shape.Ball(1.3), 4.0 / 3 * Math.PI * Math.Pow(1.3, 3)); // Source: Archimedes, On the sphere and cylinder I, 34
        Agree(Shape.Torus(1.5, 0.4), 2 * Math.PI * Math.PI * 1.5 * 0.16); // Source: Pappus, Collection VII: path of the centroid times section
        Agree(Shape.Ring(0.8, 1.5, 0.9), Math.PI * (1.5 * 1.5 - 0.8 * 0.8) * 0.9); // Pappus again
        Agree(Shape.Cone(1.2, 0, 1.5), Math.PI * 1.44 * 1.5 / 3); // Source: Euclid, Elements XII, 10
        Agree(Shape.Capsule(Vec3.Zero, new Vec3(0.6, 0, 0.8), 0.4), Math.PI * 0.16 + 4.0 / 3 * Math.PI * 0.064);

        static void Agree(Solid solid, double volume)
            => Assert.Equal(1, MassProperties.Of(Mesher.Run(solid, Fine, stop: Stop).Mesh, solid).Volume / volume, 2e-5);
    }

    [Fact]
    public void A_sharp_box_comes_out_exact_wherever_the_grid_falls()
    {
        foreach (var cell in new[] { 0.05, 0.0437, 0.1, 0.31 })
        {
            var mesh = Mesher.Run(Shape.Box(2, 1.5, 1), new MeshSettings(cell, 0.01, false), stop: Stop).Mesh;
            Assert.Equal(1, MassProperties.Of(mesh).Volume / 3, 1e-6);
        }
    }

    [Theory]
    [InlineData("turned filleted difference")]
    [InlineData("chamfered union")]
    public void The_number_of_threads_changes_no_byte(string name)
    {
        var settings = new MeshSettings(0.06, 0.01, true);
        var one = Mesher.Run(NamedSolids.All[name], settings, threads: 1, stop: Stop);
        foreach (var threads in new[] { 2, 3, 5 })
        {
            var other = Mesher.Run(NamedSolids.All[name], settings, threads: threads, stop: Stop);
            Assert.True(Bytes(one.Mesh).SequenceEqual(Bytes(other.Mesh)));
            Assert.Equal(one with { Mesh = other.Mesh }, other);
        }

        static byte[] Bytes(Mesh mesh) => [.. MemoryMarshal.AsBytes(mesh.Positions), .. MemoryMarshal.AsBytes(mesh.Triangles)];
    }

    [Fact]
    public void A_mirrored_solid_has_the_same_volume_and_the_mirrored_middle()
    {
        var solid = NamedSolids.All["turned filleted difference"];
        var mirrored = solid.Moved(Pose.Mirror(new Vec3(1, 2, 0.5)));
        Mesh here = Mesher.Run(solid, Fine, stop: Stop).Mesh, there = Mesher.Run(mirrored, Fine, stop: Stop).Mesh;
        MassProperties left = MassProperties.Of(here, solid), right = MassProperties.Of(there, mirrored);
        Assert.Equal(1, left.Volume / right.Volume, 1e-4);
        Assert.True((Pose.Mirror(new Vec3(1, 2, 0.5)).Point(left.Centroid) - right.Centroid).Length < 1e-4);
    }

    [Fact]
    public void A_mesh_made_from_the_solid_near_it_is_the_same()
    {
        var solid = NamedSolids.All["filleted union"];
        var far = Solid.Union(solid, Shape.Ball(1).Moved(0, 0, 60));
        var near = far.Near(0, 0, 0, 6, out _);
        Assert.True(near.LeafCount < far.LeafCount);
        var box = Shape.Box(7, 7, 7);
        Mesh whole = Mesher.Run(Solid.Common(far, box), Fine, stop: Stop).Mesh, pruned = Mesher.Run(Solid.Common(near, box), Fine, stop: Stop).Mesh;
        Assert.True(whole.Positions.SequenceEqual(pruned.Positions));
        Assert.True(whole.Triangles.SequenceEqual(pruned.Triangles));
    }

    [Fact]
    public void The_certificate_bounds_the_distance_of_every_vertex()
    {
        var solid = NamedSolids.All["filleted intersection"];
        var outcome = Mesher.Run(solid, Fine, stop: Stop);
        var worst = Enumerable.Range(0, outcome.Mesh.VertexCount).Max(v => Math.Abs(solid.Distance(outcome.Mesh.Vertex(v))));
        Assert.True(worst <= outcome.CertifiedDeviationMm + 1e-5);
        Assert.Equal(outcome.CertifiedDeviationMm, Math.Abs(solid.Distance(outcome.WorstAt)), 1e-5);
    }

    [Fact]
    public void What_cannot_be_meshed_is_told_by_a_status()
    {
        Assert.Equal(MeshStatus.Unbounded, Mesher.Run(Shape.HalfSpace(), Fine, stop: Stop).Status);
        Assert.Equal(MeshStatus.Unbounded, Mesher.Run(Shape.Ball(1).Complement(), Fine, stop: Stop).Status);
        Assert.Equal(MeshStatus.Empty, Mesher.Run(Solid.Common(Shape.Ball(1), Shape.Ball(1).Moved(5, 0, 0)), Fine, stop: Stop).Status);
        Assert.Equal(MeshStatus.Empty, Mesher.Run(Shape.Ball(1).Minus(Shape.Ball(2)), Fine, stop: Stop).Status);
        var large = Mesher.Run(Shape.Ball(10), new MeshSettings(0.01, 0.01, false) { MostBlocks = 500 }, stop: Stop);
        Assert.Equal(MeshStatus.TooLarge, large.Status);
        Assert.True(large.Blocks >= 500);
        Assert.Equal(MeshStatus.TooLarge, Mesher.Run(Shape.Ball(9000), new MeshSettings(0.001, 0.01, false), stop: Stop).Status);
    }

    [Fact]
    public void The_cell_is_halved_until_the_deviation_is_reached_or_the_limit()
    {
        var fine = Mesher.Run(Shape.Ball(1), new MeshSettings(0.4, 0.006, false), stop: Stop);
        Assert.Equal(MeshStatus.Meshed, fine.Status);
        Assert.True(fine.CellMm < 0.4 && fine.CertifiedDeviationMm <= 0.006);
        var coarse = Mesher.Run(Shape.Ball(1), new MeshSettings(0.4, 1e-5, false) { MostHalvings = 1 }, stop: Stop);
        Assert.Equal(MeshStatus.DeviationNotReached, coarse.Status);
        Assert.True(coarse.CellMm == 0.2 && coarse.Mesh.TriangleCount > 0);
    }

    [Fact]
    public void A_stopped_run_says_so()
        => Assert.Throws<OperationCanceledException>(() => Mesher.Run(Shape.Ball(1), Fine, stop: new CancellationToken(true)));

    [Fact]
    public void Random_solids_give_sound_surfaces_whose_triangles_never_meet()
        => SolidRecipe.Any.Sample(IsSound, iter: 60, threads: 1);

    [Fact]
    [Trait("Speed", "slow")]
    public void Many_random_solids_give_sound_surfaces_whose_triangles_never_meet()
        => SolidRecipe.Any.Sample(IsSound, iter: 600, threads: 1);

    private static bool IsSound(SolidRecipe recipe)
    {
        var outcome = Mesher.Run(recipe.Build(), new MeshSettings(0.1, 1, false), stop: Stop);
        return outcome.Status == MeshStatus.Empty
            || (outcome.Status == MeshStatus.Meshed && Topology.Inspect(outcome.Mesh).IsSound && MeshIntersections.Find(outcome.Mesh, 1, stop: Stop).Count == 0);
    }
}
