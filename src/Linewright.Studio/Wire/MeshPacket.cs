using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text.Json;
using Linewright.Parts;
using Linewright.Solids.Space;
using Linewright.Studio.Pieces;

namespace Linewright.Studio.Wire;

/// <summary>Surfaces, poses and the stone of a piece as one block of bytes that the browser hands to its graphics card as it is.</summary>
/// <remarks>
/// Layout, little-endian: the letters LWM1, the length of the header in bytes, the header (JSON, padded with spaces to a multiple of
/// four), then arrays of 32-bit numbers. The header names each array by its offset from the first and its length, both in numbers.
/// A pose is twelve numbers: the images of x, y and z, then the origin.
/// </remarks>
public static class MeshPacket
{
    private const uint Mark = 0x314D574C; // LWM1

    /// <summary>Packs a view of a piece.</summary>
    public static byte[] Pack(SolvedPiece solved, PartState state, string quality, ImmutableArray<ShadedMesh> meshes)
    {
        ArgumentNullException.ThrowIfNull(solved);
        var store = new Store();
        var header = new
        {
            quality,
            state = state == PartState.AsCast ? "cast" : "set",
            parts = meshes.Select(mesh => new
            {
                name = mesh.Part.Name,
                role = Role(mesh.Part.Role),
                count = mesh.Part.Count,
                deviationMm = mesh.DeviationMm,
                volumeMm3 = mesh.VolumeMm3,
                positions = store.Add(mesh.Positions),
                normals = store.Add(mesh.Normals),
                triangles = store.Add(MemoryMarshal.Cast<int, float>(mesh.Triangles)),
            }).ToList(),
            stone = Stone(solved.Piece, store),
            poses = PoseBook.All(solved.Piece).Select(pose => new
            {
                name = pose.Name,
                parts = solved.Piece.Parts.ToDictionary(part => Role(part.Role), part => store.Add(Flat(pose.Of(part.Role))), StringComparer.Ordinal),
                stones = store.Add(Flat(pose.Stones)),
            }).ToList(),
            line = Line(solved.Piece),
        };
        var text = JsonSerializer.SerializeToUtf8Bytes(header);
        var padded = (text.Length + 3) / 4 * 4;
        var packet = new byte[8 + padded + store.Length * 4];
        BinaryPrimitives.WriteUInt32LittleEndian(packet, Mark);
        BinaryPrimitives.WriteInt32LittleEndian(packet.AsSpan(4), padded);
        packet.AsSpan(8, padded).Fill((byte)' ');
        text.CopyTo(packet, 8);
        store.CopyTo(packet.AsSpan(8 + padded));
        return packet;
    }

    /// <summary>The role as the page spells it.</summary>
    public static string Role(PartRole role) => role switch
    {
        PartRole.Link => "link",
        PartRole.Box => "box",
        PartRole.Tongue => "tongue",
        PartRole.Safety => "safety",
        _ => "pin",
    };

    /// <summary>The role with a name, null where there is none.</summary>
    public static PartRole? Role(string name)
        => Enum.GetValues<PartRole>().Where(role => Role(role) == name).Select(role => (PartRole?)role).FirstOrDefault();

    private static object Stone(Piece piece, Store store)
    {
        var brief = piece.Design.Brief;
        var body = piece.Stone.Body;
        var facets = body.Faces.Select(face => face.Plane).ToList();
        var species = brief.Species;
        var tint = StoneTints.Of(species.Key);

        // Each facet as a fan, flat shaded by its plane.
        List<float> positions = [], normals = [];
        foreach (var face in body.Faces)
        {
            for (var i = 1; i + 1 < face.Loop.Length; i++)
            {
                foreach (var corner in (int[])[face.Loop[0], face.Loop[i], face.Loop[i + 1]])
                {
                    Add(positions, body.Vertices[corner]);
                    Add(normals, face.Plane.Normal);
                }
            }
        }

        return new
        {
            diameterMm = piece.Stone.DiameterMm,
            girdleHeightMm = piece.Link.GirdleHeightMm,
            index = (species.RefractiveIndexLow + species.RefractiveIndexHigh) / 2,
            dispersion = species.Dispersion,
            tint = new[] { tint.Red, tint.Green, tint.Blue },
            planes = store.Add([.. facets.SelectMany(plane => (float[])[(float)plane.Normal.X, (float)plane.Normal.Y, (float)plane.Normal.Z, (float)plane.Offset])]),
            positions = store.Add([.. positions]),
            normals = store.Add([.. normals]),
        };
    }

    private static object Line(Piece piece) => new
    {
        count = piece.Layout.Count,
        pitchMm = piece.Layout.PitchMm,
        claspMm = piece.Clasp.LengthMm,
        hingeHeightMm = piece.Hinge.HeightMm,
        playMm = piece.Hinge.PlayMm,
        widthMm = piece.Link.WidthMm,
        claspWidthMm = piece.Clasp.WidthMm,
        claspHeightMm = piece.Clasp.HeightMm,
        tableMm = piece.Link.TableHeightMm,
        strokeMm = piece.Clasp.MouthMm - piece.Clasp.FoldMm + piece.Clasp.PressMm,
        metal = new[] { piece.Design.Brief.Alloy.Colour.Red, piece.Design.Brief.Alloy.Colour.Green, piece.Design.Brief.Alloy.Colour.Blue },
    };

    private static void Add(List<float> list, Vec3 v) => list.AddRange([(float)v.X, (float)v.Y, (float)v.Z]);

    private static float[] Flat(ImmutableArray<Pose> poses)
    {
        List<float> numbers = new(poses.Length * 12);
        foreach (var pose in poses)
        {
            Add(numbers, pose.AxisX);
            Add(numbers, pose.AxisY);
            Add(numbers, pose.AxisZ);
            Add(numbers, pose.Origin);
        }

        return [.. numbers];
    }

    /// <summary>Arrays one behind the other.</summary>
    private sealed class Store
    {
        private readonly List<float[]> arrays = [];

        public int Length { get; private set; }

        public int[] Add(ReadOnlySpan<float> numbers)
        {
            int[] place = [Length, numbers.Length];
            arrays.Add(numbers.ToArray());
            Length += numbers.Length;
            return place;
        }

        public void CopyTo(Span<byte> target)
        {
            var at = 0;
            foreach (var array in arrays)
            {
                var bytes = MemoryMarshal.AsBytes<float>(array);
                bytes.CopyTo(target[at..]);
                at += bytes.Length;
            }
        }
    }
}
