using CsCheck;
using Linewright.Files;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Tests.Files;

/// <summary>Closed meshes whose size is known by arithmetic, and a small assembly of them.</summary>
internal static class SampleScenes
{
    public static readonly FileMaterial Gold = new("gold-750-yellow", 1.0, 0.71, 0.29, 1, 0.15);

    public static readonly FileMaterial Stone = new("diamond", 0.98, 0.99, 1.0, 0, 0, 2.417);

    /// <summary>Random closed, oriented surfaces of genus 1: a ring whose every vertex has its own radius.</summary>
    public static readonly Gen<Mesh> Rings =
        Gen.Select(Gen.Int[3, 12], Gen.Int[3, 9]).SelectMany((around, across)
            => Gen.Float[0.4f, 1.6f].Array[around * across].Select(radii => Ring(around, across, 4, (i, j) => radii[i * across + j])));

    /// <summary>A ring about z: polygons of <paramref name="across"/> sides strung on a circle of <paramref name="around"/> places.</summary>
    public static Mesh Ring(int around, int across, double middle, Func<int, int, double> radius)
    {
        var positions = new List<float>();
        var triangles = new List<int>();
        for (var i = 0; i < around; i++)
        {
            for (var j = 0; j < across; j++)
            {
                double u = 2 * Math.PI * i / around, v = 2 * Math.PI * j / across, r = radius(i, j);
                var outwards = middle + r * Math.Cos(v);
                positions.AddRange([(float)(outwards * Math.Cos(u)), (float)(outwards * Math.Sin(u)), (float)(r * Math.Sin(v))]);
                int a = i * across + j, b = (i + 1) % around * across + j;
                int c = (i + 1) % around * across + (j + 1) % across, d = i * across + (j + 1) % across;
                triangles.AddRange([a, b, c, a, c, d]);
            }
        }

        return new Mesh([.. positions], [.. triangles]);
    }

    public static Mesh Box(double x, double y, double z)
    {
        var positions = new List<float>();
        for (var corner = 0; corner < 8; corner++)
        {
            positions.AddRange(
            [
                (float)((corner & 1) == 0 ? -x / 2 : x / 2),
                (float)((corner & 2) == 0 ? -y / 2 : y / 2),
                (float)((corner & 4) == 0 ? 0 : z),
            ]);
        }

        return new Mesh([.. positions],
        [
            0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4,
            2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5,
        ]);
    }

    /// <summary>An eight-sided double cone, shaped like a single-cut stone without its table.</summary>
    public static Mesh Spindle(double radius, double up, double down)
    {
        var positions = new List<float>();
        var triangles = new List<int>();
        for (var i = 0; i < 8; i++)
        {
            positions.AddRange([(float)(radius * Math.Cos(Math.PI * i / 4)), (float)(radius * Math.Sin(Math.PI * i / 4)), 0]);
            triangles.AddRange([i, (i + 1) % 8, 8, (i + 1) % 8, i, 9]);
        }

        positions.AddRange([0, 0, (float)up, 0, 0, (float)-down]);
        return new Mesh([.. positions], [.. triangles]);
    }

    /// <summary>Twelve rings and twelve stones along a quarter of a circle, and one box after them.</summary>
    public static FileScene Line()
    {
        var places = Enumerable.Range(0, 12)
            .Select(i => Pose.Move(0, 0, 20).Then(Pose.Turn(Vec3.UnitY, i * Math.PI / 24)).Then(Pose.Move(0, 0, -20))).ToList();
        return new FileScene("Harbour lights",
        [
            new MeshPart("link", Ring(48, 24, 1, (_, _) => 0.25), places, Gold) { PartNumber = "HL-01" },
            new MeshPart("stone", Spindle(0.9, 0.4, 0.8), places, Stone) { Faceted = true },
            new MeshPart("clasp box", Box(6, 3, 2), [Pose.Move(-5, 0, -1)], Gold),
        ]);
    }

    /// <summary>Signed volume from the triangles, mm3.</summary>
    public static double Volume(Mesh mesh)
    {
        double sum = 0;
        for (var i = 0; i < mesh.Triangles.Length; i += 3)
        {
            sum += mesh.Vertex(mesh.Triangles[i]).Dot(mesh.Vertex(mesh.Triangles[i + 1]).Cross(mesh.Vertex(mesh.Triangles[i + 2]))) / 6;
        }

        return sum;
    }

    public static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
