using System.Text;
using CsCheck;
using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Files;

public class StlTests
{
    [Fact]
    public void What_is_written_is_read_back()
        => SampleScenes.Rings.Sample(mesh =>
        {
            var back = Read(Written(mesh));
            return back.TriangleCount == mesh.TriangleCount
                && back.VertexCount == mesh.VertexCount
                && Corners(back).SequenceEqual(Corners(mesh));
        });

    [Fact]
    public void Writing_what_was_read_gives_the_same_bytes()
        => SampleScenes.Rings.Sample(mesh =>
        {
            var bytes = Written(mesh);
            return Written(Read(bytes)).AsSpan().SequenceEqual(bytes);
        });

    [Fact]
    public void Facet_normals_point_out_and_have_length_one()
    {
        var bytes = Written(SampleScenes.Box(6, 3, 2));
        for (var at = 84; at < bytes.Length; at += 50)
        {
            Vec3 normal = Point(bytes, at), corner = Point(bytes, at + 12);
            Assert.Equal(1, normal.Length, 1e-6);
            Assert.True(normal.Dot(corner - new Vec3(0, 0, 1)) > 0.5);
        }
    }

    [Theory]
    [InlineData("link")]
    [InlineData("solid gold")]
    [InlineData("Rivière Nº 7, a name that is far longer than the eighty bytes that a header has room for")]
    public void A_header_has_eighty_bytes_and_never_says_solid_first(string name)
    {
        var bytes = SampleScenes.Bytes(s => StlWriter.Write(s, SampleScenes.Box(1, 1, 1), name));
        Assert.Equal(84 + 12 * 50, bytes.Length);
        Assert.StartsWith("Linewright, mm: ", Encoding.ASCII.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void The_layout_is_little_endian_byte_for_byte()
    {
        var mesh = new Mesh([0, 0, 0, 1, 0, 0, 0, 2, 0], [0, 1, 2]);
        const string expected = // count 1, normal 0 0 1, corners, attribute 0; 1.0f is 00 00 80 3F, 2.0f is 00 00 00 40
            "01000000" + "00000000000000000000803F" + "000000000000000000000000"
            + "0000803F0000000000000000" + "000000000000004000000000" + "0000";
        Assert.Equal(expected, Convert.ToHexString(Written(mesh).AsSpan(80)));
    }

    [Fact]
    public void A_file_cut_short_says_where()
    {
        var bytes = Written(SampleScenes.Box(1, 1, 1));
        var fault = Assert.Throws<BrokenFileException>(() => Read(bytes[..^60]));
        Assert.Equal("STL: byte 584: the file ends after 10 of 12 triangles", fault.Message);
        Assert.Equal(584, fault.Offset);
        Assert.Equal(30, Assert.Throws<BrokenFileException>(() => Read(bytes[..30])).Offset);
    }

    [Fact]
    public void A_file_that_goes_on_after_its_last_triangle_is_refused()
        => Assert.Equal(684, Assert.Throws<BrokenFileException>(() => Read([.. Written(SampleScenes.Box(1, 1, 1)), 0])).Offset);

    [Fact]
    public void The_text_form_is_refused_by_name()
        => Assert.Contains("text form", Assert.Throws<BrokenFileException>(() => Read(Encoding.ASCII.GetBytes("solid box\nfacet"))).Message, StringComparison.Ordinal);

    [Fact]
    public void A_coordinate_that_is_no_number_is_refused()
    {
        var bytes = Written(SampleScenes.Box(1, 1, 1));
        BitConverter.GetBytes(float.NaN).CopyTo(bytes, 84 + 12 + 12);
        Assert.Equal(84 + 12 + 12, Assert.Throws<BrokenFileException>(() => Read(bytes)).Offset);
    }

    [Fact]
    public void Damage_anywhere_gives_a_mesh_or_a_broken_file_and_nothing_else()
        => Gen.Select(Gen.Int[0, 683], Gen.Byte, Gen.Int[0, 684]).Sample((at, value, length) =>
        {
            var bytes = Written(SampleScenes.Box(1, 1, 1));
            bytes[at] = value;
            try
            {
                Read(bytes[..length]);
            }
            catch (BrokenFileException fault)
            {
                return fault.Offset >= 0 && fault.Offset <= length;
            }

            return length == 684;
        });

    private static byte[] Written(Mesh mesh) => SampleScenes.Bytes(s => StlWriter.Write(s, mesh, "part"));

    private static Mesh Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return StlReader.Read(stream);
    }

    private static IEnumerable<Vec3> Corners(Mesh mesh) => mesh.Triangles.ToArray().Select(mesh.Vertex);

    private static Vec3 Point(byte[] bytes, int at)
        => new(BitConverter.ToSingle(bytes, at), BitConverter.ToSingle(bytes, at + 4), BitConverter.ToSingle(bytes, at + 8));
}
