using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Linewright.Solids.Meshing;

namespace Linewright.Files;

/// <summary>Reads binary STL back into a mesh, joining corners that have exactly equal coordinates.</summary>
/// <remarks>
/// The text form is refused. Stored normals are ignored: the corners' order says which side is outside.
/// Vertices come in order of first use. Nothing is repaired; a hole in the file is a hole in the mesh.
/// </remarks>
public static class StlReader
{
    private const string Format = "STL";

    /// <summary>Reads to the end of the stream.</summary>
    /// <exception cref="BrokenFileException">The file is text, cut short, too long, or holds a coordinate that is no number.</exception>
    public static Mesh Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var count = ReadCount(stream);
        var vertices = new Dictionary<(float X, float Y, float Z), int>();
        var positions = new List<float>();
        var triangles = new List<int>();
        Span<byte> facet = stackalloc byte[StlWriter.FacetBytes];
        long offset = StlWriter.HeaderBytes + sizeof(uint);
        for (uint i = 0; i < count; i++, offset += facet.Length)
        {
            if (stream.ReadAtLeast(facet, facet.Length, throwOnEndOfStream: false) < facet.Length)
            {
                throw new BrokenFileException(Format, offset, string.Create(
                    CultureInfo.InvariantCulture, $"the file ends after {i} of {count} triangles"));
            }

            // The first 12 bytes are the normal.
            for (var at = 12; at < 48; at += 12)
            {
                triangles.Add(Vertex(facet.Slice(at, 12), offset + at));
            }
        }

        if (stream.ReadByte() >= 0)
        {
            throw new BrokenFileException(Format, offset, "bytes follow the last triangle");
        }

        return new Mesh([.. positions], [.. triangles]);

        int Vertex(ReadOnlySpan<byte> bytes, long place)
        {
            // Adding zero turns -0 into +0, so that both join.
            var p = (X: Single(bytes) + 0f, Y: Single(bytes[4..]) + 0f, Z: Single(bytes[8..]) + 0f);
            if (!float.IsFinite(p.X) || !float.IsFinite(p.Y) || !float.IsFinite(p.Z))
            {
                throw new BrokenFileException(Format, place, "a coordinate is no finite number");
            }

            if (!vertices.TryGetValue(p, out var index))
            {
                index = vertices.Count;
                vertices.Add(p, index);
                positions.AddRange([p.X, p.Y, p.Z]);
            }

            return index;
        }
    }

    private static float Single(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadSingleLittleEndian(bytes);

    private static uint ReadCount(Stream stream)
    {
        Span<byte> head = stackalloc byte[StlWriter.HeaderBytes + sizeof(uint)];
        var read = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        if (Encoding.ASCII.GetString(head[..Math.Min(read, 6)]).StartsWith("solid ", StringComparison.Ordinal))
        {
            throw new BrokenFileException(Format, 0, "this is the text form; only the binary form is read");
        }

        return read == head.Length
            ? BinaryPrimitives.ReadUInt32LittleEndian(head[StlWriter.HeaderBytes..])
            : throw new BrokenFileException(Format, read, "the file ends inside its 84-byte head");
    }
}
