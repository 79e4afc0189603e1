using Linewright.Casting;
using Linewright.Delivery;
using Linewright.Files;
using Linewright.Solids.Measures;
using Linewright.Solids.Space;
using Linewright.Tests.Core;

namespace Linewright.Tests.Files;

/// <summary>The printer's plate as a file, before judges that we did not write.</summary>
public sealed class PlateFileTests
{
    private static readonly Lazy<Dictionary<string, byte[]>> Written = new(() => Write(CheckedPieces.YellowCasting));

    [Fact]
    public void A_plan_is_written_as_a_plate_and_a_table_of_trees()
    {
        Assert.Equal(["plate.3mf", "tree.csv"], Written.Value.Keys.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        var rows = System.Text.Encoding.UTF8.GetString(Written.Value["tree.csv"]).Trim().Split('\n');
        Assert.Equal("tree,ring,part,count,height_mm,first_deg,every_deg", rows[0].Trim());
        Assert.Equal(CheckedPieces.YellowCasting.Plan.Trees.Sum(tree => tree.Rings.Length), rows.Length - 1);
        Assert.Equal(Written.Value["plate.3mf"], Write(CheckedPieces.YellowCasting)["plate.3mf"]);
    }

    [Fact]
    public void The_format_owners_library_finds_every_pattern_on_the_plate()
    {
        using var file = new ScratchFile("plate.3mf", stream => stream.Write(Written.Value["plate.3mf"]));
        var found = OutsideTools.Read3mf(file.Path);
        var (plan, patterns) = (CheckedPieces.YellowCasting.Plan, CheckedPieces.YellowCasting.Meshes);
        Assert.Empty(found.Warnings);
        Assert.True(found.IsInMillimetres);
        Assert.Equal(4, found.Meshes.Count);
        Assert.All(found.Meshes, mesh => Assert.True(mesh.IsManifold, mesh.Name));
        Assert.Equal(plan.Parts.Sum(part => part.Part.Count), Assert.Single(found.Assemblies).Placements.Count);

        // Its places with our meshes: inside the plate, each box clear of the others.
        var process = CheckedPieces.Yellow.Piece.Design.Brief.Process;
        var meshes = plan.Plates[0].Places.GroupBy(place => place.Part).SelectMany(group => Enumerable.Repeat(patterns[group.Key], group.Count())).ToList();
        var boxes = meshes.Zip(found.Assemblies[0].Placements, (mesh, pose) => mesh.Moved(pose).Bounds).ToList();
        Assert.All(boxes, box => Assert.True(
            box.Low is { X: > -1e-3, Y: > -1e-3, Z: > -1e-3 } && box.High.X < process.PlateXMm + 1e-3 && box.High.Y < process.PlateYMm + 1e-3 && box.High.Z < process.PlateZMm));
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                Assert.True(boxes[i].Meet(boxes[j]).IsEmpty, FormattableString.Invariant($"{i} and {j}"));
            }
        }
    }

    [Fact]
    public void A_solid_kernel_finds_the_patterns_apart_and_inside_the_plate()
    {
        using var file = new ScratchFile("plate.3mf", stream => stream.Write(Written.Value["plate.3mf"]));
        var (plan, patterns) = (CheckedPieces.YellowCasting.Plan, CheckedPieces.YellowCasting.Meshes);
        var found = OutsideTools.Plate(file.Path, 110, 60, 100);
        Assert.Equal(("NoError", true, true), (found.Status, found.Apart, found.Inside));
        Assert.Equal((plan.Plates[0].Places.Length, plan.Plates[0].Places.Length), (found.Parts, found.Bodies));
        Assert.Equal(plan.Parts.Zip(patterns).Sum(part => part.First.Part.Count * MassProperties.Of(part.Second).Volume), found.Volume, 1e-4 * found.Volume);

        // What is weighed is what is printed, enlarged: flat triangles within 50 um are a little light.
        var cubed = Math.Pow(plan.Report.PatternScale, 3);
        Assert.Equal(1, found.Volume / (plan.Parts.Sum(part => part.CastMm3 * part.Part.Count) * cubed), 0.02);
        Assert.False(OutsideTools.Plate(file.Path, 60, 60, 100).Inside); // The judge can say no
    }

    [Fact]
    public void The_solid_kernel_sees_parts_that_overlap()
    {
        var box = SampleScenes.Box(2, 2, 2);
        using var file = new ScratchFile("two.3mf", stream => ThreeMfWriter.Write(stream, new FileScene(
            "two", [new MeshPart("box", box, [Pose.Identity, Pose.Move(1.9, 0, 0)], SampleScenes.Gold)])));
        var found = OutsideTools.Plate(file.Path, 10, 10, 10);
        Assert.False(found.Apart);
        Assert.Equal((16, 15.6), (Math.Round(found.Volume, 6), Math.Round(found.Union, 6))); // 0.1 x 2 x 2 is shared
    }

    private static Dictionary<string, byte[]> Write(CastingPatterns patterns)
    {
        var files = new Dictionary<string, MemoryStream>(StringComparer.Ordinal);
        CastingFiles.Write(patterns, name => files[name] = new MemoryStream(), CancellationToken.None);
        return files.ToDictionary(file => file.Key, file => file.Value.ToArray(), StringComparer.Ordinal);
    }
}
