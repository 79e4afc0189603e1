using System.Text;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>Writes a mesh as binary STL, the file that casting houses and printers take. Millimetres.</summary>
/// <remarks>
/// STL knows neither units nor names: both stand in the 80-byte header for a person to read. The header never
/// starts with "solid", which many readers take for the text form. The same mesh and name give the same bytes.
/// Facet normals are computed from the corners; a triangle without area gets 0, 0, 0.
/// </remarks>
public static class StlWriter
{
    // Layout. Source: 3D Systems, StereoLithography Interface Specification (1989): header, count, then 50 bytes a facet.
    internal const int HeaderBytes = 80;
    internal const int FacetBytes = 50;

    /// <summary>Writes the mesh and leaves the stream open.</summary>
    /// <param name="stream">Where to write; need not seek.</param>
    /// <param name="mesh">Surface in mm, counter-clockwise seen from outside.</param>
    /// <param name="name">The part's name for the header; what does not fit or is not ASCII is cut or becomes '?'.</param>
    public static void Write(Stream stream, Mesh mesh, string name)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(name);
        using var writer = new BinaryWriter(stream, Encoding.ASCII, leaveOpen: true);
        writer.Write(Header(name));
        writer.Write((uint)mesh.TriangleCount);
        for (var i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Vec3 a = mesh.Vertex(mesh.Triangles[i]), b = mesh.Vertex(mesh.Triangles[i + 1]), c = mesh.Vertex(mesh.Triangles[i + 2]);
            WritePoint(writer, (b - a).Cross(c - a).Normalised());
            WritePoint(writer, a);
            WritePoint(writer, b);
            WritePoint(writer, c);
            writer.Write((ushort)0);
        }
    }

    private static byte[] Header(string name)
    {
        var header = new byte[HeaderBytes];
        header.AsSpan().Fill((byte)' ');
        var text = "Linewright, mm: " + name.ReplaceLineEndings(" ");
        Encoding.ASCII.GetBytes(text.AsSpan(0, Math.Min(text.Length, HeaderBytes)), header);
        return header;
    }

    private static void WritePoint(BinaryWriter writer, Vec3 p)
    {
        // BinaryWriter writes the low byte first on every machine, as the format wants.
        writer.Write((float)p.X);
        writer.Write((float)p.Y);
        writer.Write((float)p.Z);
    }
}
