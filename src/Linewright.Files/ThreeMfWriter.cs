using System.Globalization;
using System.Text;
using System.Xml;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Files;

/// <summary>Writes an assembly as 3MF: millimetres stated, one mesh per unique part, one component per instance.</summary>
/// <remarks>
/// <para>
/// Format: 3MF Consortium, 3D Manufacturing Format core specification 1.x. A triangle that names a vertex twice
/// covers nothing and is forbidden there; it is left out. The single build item moves the assembly
/// to where the specification wants it, with no negative coordinate; the components keep the assembly's own frame.
/// </para>
/// <para>
/// Numbers are the shortest that read back to the same single, and the package is not packed (<see cref="StoredZip"/>):
/// the same scene gives the same bytes on every system and runtime, in a file some five times as long (docs/decisions/0012).
/// </para>
/// </remarks>
public static class ThreeMfWriter
{
    private const string Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private const string Relationship = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
    private const string ModelPath = "3D/3dmodel.model";
    private const int MaterialsId = 1;
    private const int FirstObjectId = 2;

    /// <summary>Writes the scene and leaves the stream open.</summary>
    public static void Write(Stream stream, FileScene scene)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(scene);
        using var zip = new StoredZip(stream);
        Entry(zip, "[Content_Types].xml", WriteContentTypes);
        Entry(zip, "_rels/.rels", WriteRelationships);
        Entry(zip, ModelPath, xml => WriteModel(xml, scene));
    }

    private static void Entry(StoredZip zip, string path, Action<XmlWriter> write)
    {
        using var content = new MemoryStream();
        using (var xml = XmlWriter.Create(content, new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            Indent = true,
            IndentChars = "",
            NewLineChars = "\n",
        }))
        {
            xml.WriteStartDocument();
            write(xml);
            xml.WriteEndDocument();
        }

        zip.Add(path, content.GetBuffer().AsSpan(0, (int)content.Length));
    }

    private static void WriteContentTypes(XmlWriter xml)
    {
        const string types = "http://schemas.openxmlformats.org/package/2006/content-types";
        xml.WriteStartElement("Types", types);
        foreach (var (extension, type) in new[]
        {
            ("rels", "application/vnd.openxmlformats-package.relationships+xml"),
            ("model", "application/vnd.ms-package.3dmanufacturing-3dmodel+xml"),
        })
        {
            xml.WriteStartElement("Default", types);
            xml.WriteAttributeString("Extension", extension);
            xml.WriteAttributeString("ContentType", type);
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void WriteRelationships(XmlWriter xml)
    {
        const string relationships = "http://schemas.openxmlformats.org/package/2006/relationships";
        xml.WriteStartElement("Relationships", relationships);
        xml.WriteStartElement("Relationship", relationships);
        xml.WriteAttributeString("Target", "/" + ModelPath);
        xml.WriteAttributeString("Id", "model");
        xml.WriteAttributeString("Type", Relationship);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteModel(XmlWriter xml, FileScene scene)
    {
        var assemblyId = FirstObjectId + scene.Parts.Count;
        xml.WriteStartElement("model", Core);
        xml.WriteAttributeString("unit", "millimeter");
        xml.WriteAttributeString("xml", "lang", null, "en");
        WriteMetadata(xml, "Title", scene.Name);
        WriteMetadata(xml, "Application", "Linewright");

        xml.WriteStartElement("resources", Core);
        FileMaterial[] materials = [.. scene.Materials];
        WriteMaterials(xml, materials);
        for (var i = 0; i < scene.Parts.Count; i++)
        {
            WritePart(xml, FirstObjectId + i, scene.Parts[i], Array.IndexOf(materials, scene.Parts[i].Material));
        }

        WriteAssembly(xml, assemblyId, scene);
        xml.WriteEndElement();

        xml.WriteStartElement("build", Core);
        xml.WriteStartElement("item", Core);
        xml.WriteAttributeString("objectid", Number(assemblyId));
        xml.WriteAttributeString("transform", Transform(Pose.Move(-scene.Bounds.Low)));
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteMetadata(XmlWriter xml, string name, string value)
    {
        xml.WriteStartElement("metadata", Core);
        xml.WriteAttributeString("name", name);
        xml.WriteString(value);
        xml.WriteEndElement();
    }

    private static void WriteMaterials(XmlWriter xml, IReadOnlyList<FileMaterial> materials)
    {
        xml.WriteStartElement("basematerials", Core);
        xml.WriteAttributeString("id", Number(MaterialsId));
        foreach (var material in materials)
        {
            xml.WriteStartElement("base", Core);
            xml.WriteAttributeString("name", material.Name);
            xml.WriteAttributeString("displaycolor", DisplayColour.Hex(material));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void WritePart(XmlWriter xml, int id, MeshPart part, int material)
    {
        xml.WriteStartElement("object", Core);
        xml.WriteAttributeString("id", Number(id));
        xml.WriteAttributeString("type", "model");
        xml.WriteAttributeString("name", part.Name);
        xml.WriteAttributeString("partnumber", part.PartNumber);
        xml.WriteAttributeString("pid", Number(MaterialsId));
        xml.WriteAttributeString("pindex", Number(material));
        xml.WriteStartElement("mesh", Core);
        WriteVertices(xml, part.Mesh);
        WriteTriangles(xml, part.Mesh);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void WriteVertices(XmlWriter xml, Mesh mesh)
    {
        xml.WriteStartElement("vertices", Core);
        for (var i = 0; i < mesh.Positions.Length; i += 3)
        {
            xml.WriteStartElement("vertex", Core);
            xml.WriteAttributeString("x", Number(mesh.Positions[i]));
            xml.WriteAttributeString("y", Number(mesh.Positions[i + 1]));
            xml.WriteAttributeString("z", Number(mesh.Positions[i + 2]));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void WriteTriangles(XmlWriter xml, Mesh mesh)
    {
        xml.WriteStartElement("triangles", Core);
        for (var i = 0; i < mesh.Triangles.Length; i += 3)
        {
            int a = mesh.Triangles[i], b = mesh.Triangles[i + 1], c = mesh.Triangles[i + 2];
            if (a == b || b == c || c == a)
            {
                continue;
            }

            xml.WriteStartElement("triangle", Core);
            xml.WriteAttributeString("v1", Number(a));
            xml.WriteAttributeString("v2", Number(b));
            xml.WriteAttributeString("v3", Number(c));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void WriteAssembly(XmlWriter xml, int id, FileScene scene)
    {
        xml.WriteStartElement("object", Core);
        xml.WriteAttributeString("id", Number(id));
        xml.WriteAttributeString("type", "model");
        xml.WriteAttributeString("name", scene.Name);
        xml.WriteStartElement("components", Core);
        for (var i = 0; i < scene.Parts.Count; i++)
        {
            foreach (var pose in scene.Parts[i].Placements)
            {
                xml.WriteStartElement("component", Core);
                xml.WriteAttributeString("objectid", Number(FirstObjectId + i));
                xml.WriteAttributeString("transform", Transform(pose));
                xml.WriteEndElement();
            }
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    // Points are rows here, so the images of the axes follow each other, the origin last (core specification 3.3).
    private static string Transform(Pose pose) => string.Join(' ', SteadyPose.Numbers(pose).Select(Number));

    // Adding zero turns -0 into 0.
    private static string Number(float value) => (value + 0f).ToString("R", CultureInfo.InvariantCulture);

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
