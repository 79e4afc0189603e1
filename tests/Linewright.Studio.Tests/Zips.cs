using System.IO.Compression;
using System.Text;
using System.Text.Json;
using Linewright.Files;

namespace Linewright.Studio.Tests;

/// <summary>Looks into an archive of a piece.</summary>
internal static class Zips
{
    public static void Judge(byte[] bytes)
    {
        using var zip = new ZipArchive(new MemoryStream(bytes));
        var names = zip.Entries.Select(entry => entry.FullName).ToList();
        Assert.Superset(new HashSet<string>(["report.json", "parts.csv", "piece.3mf", "piece.glb", "piece-flat.glb", "parts/link.stl", "parts/box.stl", "parts/tongue.stl"], StringComparer.Ordinal), names.ToHashSet(StringComparer.Ordinal));
        using var report = JsonDocument.Parse(Read(zip, "report.json"));
        foreach (var part in report.RootElement.GetProperty("parts").EnumerateArray())
        {
            using var stl = new MemoryStream(Read(zip, part.GetProperty("file").GetString()!));
            Assert.Equal(part.GetProperty("triangles").GetInt32(), StlReader.Read(stl).TriangleCount);
        }

        Assert.Equal("glTF", Encoding.ASCII.GetString(Read(zip, "piece.glb"), 0, 4));
        using var plate = new ZipArchive(new MemoryStream(Read(zip, "piece.3mf")));
        Assert.Contains(plate.Entries, entry => entry.FullName == "3D/3dmodel.model");
    }

    public static byte[] Read(ZipArchive zip, string name)
    {
        using var entry = zip.GetEntry(name)!.Open();
        using var bytes = new MemoryStream();
        entry.CopyTo(bytes);
        return bytes.ToArray();
    }
}
