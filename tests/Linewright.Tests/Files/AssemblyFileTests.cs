using System.Globalization;
using System.IO.Compression;
using System.Numerics;
using System.Xml.Linq;
using CsCheck;
using Linewright.Files;
using Linewright.Solids.Space;
using SharpGLTF.Schema2;

namespace Linewright.Tests.Files;

/// <summary>3MF, GLB and CSV: what a reader gets back, and that nothing but the scene decides the bytes.</summary>
public class AssemblyFileTests
{
    public static TheoryData<string> Formats => ["stl", "3mf", "glb", "csv"];

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_same_scene_gives_the_same_bytes(string format)
        => Assert.Equal(Written(format), Written(format));

    [Theory]
    [MemberData(nameof(Formats))]
    public void No_culture_gets_into_a_file(string format)
    {
        var expected = Written(format);
        var before = CultureInfo.CurrentCulture;
        // The build knows the invariant culture only, so a worse one than any country's is made from it.
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NegativeSign = "minus";
        foreign.NumberFormat.NumberGroupSeparator = ".";
        foreign.DateTimeFormat.DateSeparator = "!";
        CultureInfo.CurrentCulture = foreign;
        try
        {
            Assert.Equal("minus1,5", (-1.5).ToString(CultureInfo.CurrentCulture));
            Assert.Equal(expected, Written(format));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Writers_leave_the_stream_open(string format)
    {
        using var stream = new MemoryStream();
        Write(format, stream);
        stream.WriteByte(0);
        Assert.True(stream.Length > 1);
    }

    [Fact]
    public void A_3MF_carries_every_vertex_as_it_is()
        => SampleScenes.Rings.Sample(mesh =>
        {
            var model = Model(new FileScene("ring", [new MeshPart("ring", mesh, [Pose.Identity], SampleScenes.Gold)]));
            var read = model.Descendants().Where(e => e.Name.LocalName == "vertex")
                .SelectMany(e => new[] { "x", "y", "z" }.Select(axis => float.Parse(e.Attribute(axis)!.Value, CultureInfo.InvariantCulture)));
            var corners = model.Descendants().Where(e => e.Name.LocalName == "triangle")
                .SelectMany(e => new[] { "v1", "v2", "v3" }.Select(corner => int.Parse(e.Attribute(corner)!.Value, CultureInfo.InvariantCulture)));
            return read.SequenceEqual(mesh.Positions.ToArray()) && corners.SequenceEqual(mesh.Triangles.ToArray());
        });

    [Fact]
    public void A_3MF_entry_is_stored_and_as_old_as_ZIP_can_say()
    {
        using var zip = new ZipArchive(new MemoryStream(Written("3mf")));
        Assert.Equal(["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"], zip.Entries.Select(entry => entry.FullName), StringComparer.Ordinal);
        Assert.All(zip.Entries, entry =>
        {
            Assert.Equal(new DateTime(1980, 1, 1), entry.LastWriteTime.DateTime);
            Assert.Equal(entry.Length, entry.CompressedLength);
            Assert.Equal(0, entry.ExternalAttributes);
        });
    }

    [Fact]
    public void A_3MF_names_no_operating_system()
    {
        // Standard: ZIP, APPNOTE.TXT 4.3.12: mark, then "version made by", whose upper byte is the host; method at 10.
        var bytes = Written("3mf");
        var entries = 0;
        for (var at = bytes.AsSpan().IndexOf("PK\u0001\u0002"u8); bytes.AsSpan(at).StartsWith("PK\u0001\u0002"u8); entries++)
        {
            Assert.Equal([20, 0], bytes[(at + 4)..(at + 6)]);
            Assert.Equal([0, 0], bytes[(at + 10)..(at + 12)]);
            at += 46 + bytes[at + 28] + 256 * bytes[at + 29];
        }

        Assert.Equal(3, entries);
    }

    [Fact]
    public void A_package_has_the_bytes_that_the_format_says()
    {
        // By hand from APPNOTE.TXT 4.3; the check value of CRC-32 for "123456789" is CBF43926. Source: Williams (1993), A Painless Guide to CRC.
        var bytes = SampleScenes.Bytes(stream =>
        {
            using var zip = new StoredZip(stream);
            zip.Add("a", "123456789"u8);
        });
        Assert.Equal(
            "504B0304" + "1400" + "0000" + "0000" + "0000" + "2100" + "2639F4CB" + "09000000" + "09000000" + "0100" + "0000" + "61" + "313233343536373839"
            + "504B0102" + "1400" + "1400" + "0000" + "0000" + "0000" + "2100" + "2639F4CB" + "09000000" + "09000000" + "0100" + "0000" + "0000" + "0000" + "0000" + "00000000" + "00000000" + "61"
            + "504B0506" + "0000" + "0000" + "0100" + "0100" + "2F000000" + "28000000" + "0000",
            Convert.ToHexString(bytes));
    }

    [Fact]
    public void A_3MF_build_has_no_negative_coordinate()
    {
        var scene = SampleScenes.Line();
        var model = Model(scene);
        var item = model.Descendants().Single(e => e.Name.LocalName == "item");
        var numbers = item.Attribute("transform")!.Value.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal([1, 0, 0, 0, 1, 0, 0, 0, 1], numbers[..9]);
        Assert.Equal(0, (scene.Bounds.Low + new Vec3(numbers[9], numbers[10], numbers[11])).Length, 1e-5);
    }

    [Fact]
    public void A_display_colour_is_coded_for_the_screen()
    {
        // Standard: IEC 61966-2-1: code 128 of 255 is linear 0.21586, code 188 is 0.5029.
        var grey = new FileMaterial("grey", 0.21586, 0.5029, 0, 0, 1);
        var model = Model(new FileScene("box", [new MeshPart("box", SampleScenes.Box(1, 1, 1), [Pose.Identity], grey)]));
        Assert.Equal("#80BC00", model.Descendants().Single(e => e.Name.LocalName == "base").Attribute("displaycolor")!.Value);
    }

    [Theory]
    [InlineData("Rivi\u00e8re & <N\u00ba 7> \"\u6d77\" \U0001F48E")]
    public void Any_readable_name_comes_back_as_it_was(string name)
    {
        var scene = new FileScene(name, [new MeshPart(name, SampleScenes.Box(1, 1, 1), [Pose.Identity], SampleScenes.Gold)]);
        Assert.Equal(name, Model(scene).Descendants().First(e => e.Name.LocalName == "object").Attribute("name")!.Value);
        using var stream = new MemoryStream(SampleScenes.Bytes(s => GlbWriter.Write(s, scene)));
        Assert.Equal(name, ModelRoot.ReadGLB(stream).LogicalMeshes[0].Name);
    }

    [Fact]
    public void A_GLB_has_a_shared_mesh_a_part_and_a_named_node_an_instance()
    {
        var model = ReadGlb();
        Assert.Equal(["link", "stone", "clasp box"], model.LogicalMeshes.Select(mesh => mesh.Name), StringComparer.Ordinal);
        Assert.Equal(["gold-750-yellow", "diamond"], model.LogicalMaterials.Select(material => material.Name), StringComparer.Ordinal);
        Assert.Same(model.LogicalScenes[0], model.DefaultScene);
        var root = Assert.Single(model.DefaultScene.VisualChildren);
        Assert.Equal("Harbour lights", root.Name);
        var names = root.VisualChildren.Select(node => node.Name).ToList();
        Assert.Equal(25, names.Count);
        Assert.Equal(["link 01", "link 12", "stone 07", "clasp box"], [names[0], names[11], names[18], names[24]], StringComparer.Ordinal);
    }

    [Fact]
    public void A_GLB_stands_upright_in_metres()
    {
        var scene = SampleScenes.Line();
        var placed = scene.Parts.SelectMany(part => part.Placements).ToList();
        var nodes = ReadGlb().DefaultScene.VisualChildren.Single().VisualChildren.ToList();
        var probe = new Vec3(1, 2, 3);
        foreach (var (pose, node) in placed.Zip(nodes))
        {
            var expected = pose.Point(probe) * 0.001;
            var found = Vector3.Transform(new Vector3(1, 2, 3), node.WorldMatrix);
            Assert.Equal(0, (new Vec3(found.X, found.Y, found.Z) - new Vec3(expected.X, expected.Z, -expected.Y)).Length, 1e-8);
        }
    }

    [Fact]
    public void A_turn_survives_the_way_through_a_GLB_whatever_its_axis()
        => Poses.Sample(pose =>
        {
            var scene = new FileScene("box", [new MeshPart("box", SampleScenes.Box(1, 1, 1), [pose], SampleScenes.Gold)]);
            using var stream = new MemoryStream(SampleScenes.Bytes(s => GlbWriter.Write(s, scene)));
            var node = ModelRoot.ReadGLB(stream).DefaultScene.VisualChildren.Single().VisualChildren.Single();
            var found = Vector3.Transform(new Vector3(1, 2, 3), node.LocalMatrix);
            return (new Vec3(found.X, found.Y, found.Z) - pose.Point(new Vec3(1, 2, 3))).Length < 1e-5;
        });

    [Fact]
    public void A_GLB_stone_is_clear_and_bends_light()
    {
        var materials = ReadGlb().LogicalMaterials;
        Assert.Equal(2.417f, materials[1].IndexOfRefraction);
        Assert.Equal(1f, materials[1].FindChannel("Transmission")!.Value.Parameters.Single().Value);
        Assert.Null(materials[0].FindChannel("Transmission"));
        Assert.Equal(1f, materials[0].FindChannel("MetallicRoughness")!.Value.Parameters[0].Value);
    }

    [Fact]
    public void More_vertices_than_two_bytes_count_take_four()
    {
        var large = SampleScenes.Ring(300, 220, 4, (_, _) => 1);
        var scene = new FileScene("ring", [new MeshPart("ring", large, [Pose.Identity], SampleScenes.Gold)]);
        using var stream = new MemoryStream(SampleScenes.Bytes(s => GlbWriter.Write(s, scene)));
        var primitive = ModelRoot.ReadGLB(stream).LogicalMeshes[0].Primitives.Single();
        Assert.Equal(EncodingType.UNSIGNED_INT, primitive.IndexAccessor.Encoding);
        Assert.Equal(large.TriangleCount, primitive.GetTriangleIndices().Count());
    }

    [Fact]
    public void A_table_quotes_only_what_needs_it()
    {
        var text = System.Text.Encoding.UTF8.GetString(SampleScenes.Bytes(s => CsvWriter.Write(s, ["name", "count", "mass_g"],
        [
            ["link", 37, 0.1],
            ["box, \"long\"", 1, -1.25e-7],
            ["two\nlines", 1, 12.50m],
            [null, 0, 1234567.5],
        ])));
        // Source: RFC 4180, section 2, rules 5 to 7.
        Assert.Equal("name,count,mass_g\r\nlink,37,0.1\r\n\"box, \"\"long\"\"\",1,-1.25E-07\r\n\"two\nlines\",1,12.50\r\n,0,1234567.5\r\n", text);
    }

    [Fact]
    public void A_row_of_another_width_is_refused()
        => Assert.Throws<ArgumentException>(() => CsvWriter.Write(Stream.Null, ["a", "b"], [["1"]]));

    [Fact]
    public void Slips_are_refused_at_the_door()
    {
        var box = SampleScenes.Box(1, 1, 1);
        Assert.Throws<ArgumentException>(() => new MeshPart("box", box, [Pose.Mirror(Vec3.UnitX)], SampleScenes.Gold));
        Assert.Throws<ArgumentException>(() => new MeshPart("box", box, [], SampleScenes.Gold));
        Assert.Throws<ArgumentException>(() => new MeshPart("box", new Linewright.Solids.Meshing.Mesh([], []), [Pose.Identity], SampleScenes.Gold));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MeshPart("box", box.Moved(Pose.Move(double.NaN, 0, 0)), [Pose.Identity], SampleScenes.Gold));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FileMaterial("gold", 1.2, 0, 0, 1, 0));
        Assert.Throws<ArgumentException>(() => new FileScene("none", []));
        Assert.Throws<ArgumentException>(() => new FileMaterial("gold\u0001", 1, 0, 0, 1, 0));
        Assert.Throws<ArgumentException>(() => new MeshPart(" ", box, [Pose.Identity], SampleScenes.Gold));
    }

    private static readonly Gen<Pose> Poses = Gen.Select(
        Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.OneOf(Gen.Const(0.0), Gen.Const(Math.PI), Gen.Const(-Math.PI / 2), Gen.Double[-4, 4]),
        (x, y, z, angle) => Pose.Turn(new Vec3(x, y, z + 2), angle).Then(Pose.Move(x * 9, y, z)));

    private static ModelRoot ReadGlb()
    {
        using var stream = new MemoryStream(Written("glb"));
        return ModelRoot.ReadGLB(stream);
    }

    private static XDocument Model(FileScene scene)
    {
        using var zip = new ZipArchive(new MemoryStream(SampleScenes.Bytes(s => ThreeMfWriter.Write(s, scene))));
        using var stream = zip.GetEntry("3D/3dmodel.model")!.Open();
        return XDocument.Load(stream);
    }

    private static byte[] Written(string format) => SampleScenes.Bytes(stream => Write(format, stream));

    private static void Write(string format, Stream stream)
    {
        var scene = SampleScenes.Line();
        switch (format)
        {
            case "stl":
                StlWriter.Write(stream, scene.Parts[0].Mesh, scene.Parts[0].Name);
                break;
            case "3mf":
                ThreeMfWriter.Write(stream, scene);
                break;
            case "glb":
                GlbWriter.Write(stream, scene);
                break;
            default:
                CsvWriter.Write(stream, ["name", "x"], scene.Parts[0].Instances.Select(i => (CsvCell[])[i.Name, i.Pose.Origin.X]));
                break;
        }
    }
}
