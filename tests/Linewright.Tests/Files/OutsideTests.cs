using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Files;

/// <summary>Our files before judges that we did not write.</summary>
public class OutsideTests
{
    [Fact]
    public void A_solid_kernel_finds_our_STL_closed_and_as_large_as_arithmetic_says()
    {
        var ring = SampleScenes.Ring(96, 48, 4, (_, _) => 1);
        using var box = new ScratchFile("box.stl", s => StlWriter.Write(s, SampleScenes.Box(6, 3, 2), "box"));
        using var torus = new ScratchFile("ring.stl", s => StlWriter.Write(s, ring, "ring"));
        var found = OutsideTools.Oracle(box.Path, torus.Path);

        Assert.All(found, result => Assert.True(result.IsManifold, result.Status));
        Assert.Equal(36, found[0].Volume, 1e-6);
        Assert.Equal(2 * (18 + 12 + 6), found[0].Area, 1e-6);
        Assert.Equal((0, 1), (found[0].Genus, found[0].Bodies));
        Assert.Equal(SampleScenes.Volume(ring), found[1].Volume, 1e-4);
        // Source: Pappus of Alexandria: volume of a torus = 2 pi^2 R r^2; an inscribed polyhedron has up to 1 % less here.
        Assert.InRange(found[1].Volume, 2 * Math.PI * Math.PI * 4 * 0.99, 2 * Math.PI * Math.PI * 4);
        Assert.Equal((1, 1, ring.TriangleCount), (found[1].Genus, found[1].Bodies, found[1].Triangles));
    }

    [Fact]
    public void The_solid_kernel_refuses_a_mesh_with_a_hole()
    {
        var box = SampleScenes.Box(1, 1, 1);
        var open = new Mesh(box.Positions.ToArray(), box.Triangles[3..].ToArray());
        using var file = new ScratchFile("open.stl", s => StlWriter.Write(s, open, "open"));
        Assert.False(OutsideTools.Oracle(file.Path)[0].IsManifold);
    }

    [Fact]
    public void Admesh_finds_nothing_to_repair_in_our_STL()
    {
        var ring = SampleScenes.Ring(48, 24, 4, (_, _) => 1);
        using var file = new ScratchFile("ring.stl", s => StlWriter.Write(s, ring, "ring"));
        var found = OutsideTools.Admesh(file.Path);
        Assert.Equal((ring.TriangleCount, 1, 0, 0, 0, 0), (found.Facets, found.Parts, found.DisconnectedFacets, found.DegenerateFacets, found.ReversedFacets, found.BackwardsEdges));
        Assert.Equal(SampleScenes.Volume(ring), found.Volume, 1e-2);
    }

    [Fact]
    public void The_format_owners_validator_has_nothing_to_say_about_our_GLB()
    {
        using var file = new ScratchFile("line.glb", s => GlbWriter.Write(s, SampleScenes.Line()));
        var found = OutsideTools.ValidateGlb(file.Path);
        Assert.Equal([], found.Messages);
        Assert.Equal((0, 0), (found.Errors, found.Warnings));
        Assert.Equal(["KHR_materials_ior", "KHR_materials_transmission", "KHR_materials_volume"], found.Extensions.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        // The validator counts a shared mesh once a mesh, a primitive each.
        Assert.Equal(3, found.DrawCalls);
    }

    [Fact]
    public void The_format_owners_library_reads_our_3MF_without_a_warning()
    {
        var scene = SampleScenes.Line();
        using var file = new ScratchFile("line.3mf", s => ThreeMfWriter.Write(s, scene));
        var found = OutsideTools.Read3mf(file.Path);

        Assert.Equal([], found.Warnings);
        Assert.True(found.IsInMillimetres);
        Assert.Equal(["link", "stone", "clasp box"], found.Meshes.Select(mesh => mesh.Name), StringComparer.Ordinal);
        Assert.Equal(["HL-01", "stone", "clasp box"], found.Meshes.Select(mesh => mesh.PartNumber), StringComparer.Ordinal);
        Assert.Equal(scene.Parts.Select(part => part.Mesh.TriangleCount), found.Meshes.Select(mesh => mesh.Triangles));
        Assert.All(found.Meshes, mesh => Assert.True(mesh.IsManifold, mesh.Name));
        Assert.Equal(["gold-750-yellow", "diamond"], found.Materials);
        Assert.Equal(1, found.BuildItems);

        var assembly = Assert.Single(found.Assemblies);
        Assert.Equal("Harbour lights", assembly.Name);
        var poses = scene.Parts.SelectMany(part => part.Placements).ToList();
        Assert.Equal(25, poses.Count);
        Assert.Equal(poses.Count, assembly.Placements.Count);
        var probe = new Vec3(3, -5, 7);
        Assert.All(poses.Zip(assembly.Placements), pair
            => Assert.Equal(0, (pair.First.Point(probe) - pair.Second.Point(probe)).Length, 2e-5));
    }
}
