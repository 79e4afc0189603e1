using System.Buffers.Binary;

namespace Linewright.Paper;

/// <summary>Reads the tables of a TrueType file that setting and embedding need. Lengths in units of the type's body.</summary>
/// <remarks>Source: OpenType specification 1.9: head, hhea, hmtx, maxp, cmap (formats 4 and 12), loca, glyf, OS/2. Only for our own files: a broken one throws.</remarks>
internal sealed class TrueTypeFile
{
    private readonly byte[] bytes;
    private readonly Dictionary<string, (int Offset, int Length)> tables = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> glyphs = [];
    private readonly int advances;
    private readonly bool hasLongOffsets;

    public TrueTypeFile(byte[] bytes)
    {
        this.bytes = bytes;
        var count = U16(4);
        for (var i = 0; i < count; i++)
        {
            var entry = 12 + 16 * i;
            tables.Add(System.Text.Encoding.ASCII.GetString(bytes, entry, 4), ((int)U32(entry + 8), (int)U32(entry + 12)));
        }

        int head = At("head"), hhea = At("hhea"), os2 = At("OS/2");
        UnitsPerBody = U16(head + 18);
        Box = (S16(head + 36), S16(head + 38), S16(head + 40), S16(head + 42));
        hasLongOffsets = S16(head + 50) == 1;
        Ascent = S16(hhea + 4);
        Descent = S16(hhea + 6);
        advances = U16(hhea + 34);
        GlyphCount = U16(At("maxp") + 4);
        CapitalHeight = S16(os2 + 88);
        ReadCharacters();
    }

    public int UnitsPerBody { get; }

    public (int Left, int Low, int Right, int High) Box { get; }

    public int Ascent { get; }

    public int Descent { get; }

    public int CapitalHeight { get; }

    public int GlyphCount { get; }

    /// <summary>The glyph of a character; 0, the empty box, where there is none.</summary>
    public int GlyphOf(int character) => glyphs.GetValueOrDefault(character);

    /// <summary>How far a glyph moves the pen.</summary>
    public int AdvanceOf(int glyph) => U16(At("hmtx") + 4 * Math.Min(glyph, advances - 1));

    /// <summary>Where a glyph's ink begins.</summary>
    public int BearingOf(int glyph)
        => glyph < advances ? S16(At("hmtx") + 4 * glyph + 2) : S16(At("hmtx") + 4 * advances + 2 * (glyph - advances));

    /// <summary>The outline of a glyph as it lies in the file; empty for a space.</summary>
    public ReadOnlySpan<byte> OutlineOf(int glyph)
    {
        int loca = At("loca"), glyf = At("glyf");
        int Start(int index) => hasLongOffsets ? (int)U32(loca + 4 * index) : 2 * U16(loca + 2 * index);
        return bytes.AsSpan(glyf + Start(glyph), Start(glyph + 1) - Start(glyph));
    }

    /// <summary>A whole table, or none.</summary>
    public ReadOnlySpan<byte> Table(string tag)
        => tables.TryGetValue(tag, out var place) ? bytes.AsSpan(place.Offset, place.Length) : [];

    private int At(string tag) => tables.TryGetValue(tag, out var place) ? place.Offset : throw new InvalidDataException($"the type has no table {tag}");

    private void ReadCharacters()
    {
        var cmap = At("cmap");
        var count = U16(cmap + 2);
        for (var i = 0; i < count; i++)
        {
            int platform = U16(cmap + 4 + 8 * i), table = cmap + (int)U32(cmap + 8 + 8 * i);
            switch ((platform, U16(table)))
            {
                case (3 or 0, 4):
                    ReadSegments(table);
                    break;
                case (3 or 0, 12):
                    ReadGroups(table);
                    break;
                default:
                    break;
            }
        }
    }

    private void ReadSegments(int table)
    {
        int segments = U16(table + 6) / 2, ends = table + 14, starts = ends + 2 * segments + 2, deltas = starts + 2 * segments, ranges = deltas + 2 * segments;
        for (var s = 0; s < segments; s++)
        {
            int first = U16(starts + 2 * s), last = U16(ends + 2 * s), range = U16(ranges + 2 * s);
            for (var c = first; c <= last && c != 0xFFFF; c++)
            {
                var glyph = range == 0 ? c : U16(ranges + 2 * s + range + 2 * (c - first));
                if (range == 0 || glyph != 0)
                {
                    glyphs.TryAdd(c, (glyph + U16(deltas + 2 * s)) & 0xFFFF);
                }
            }
        }
    }

    private void ReadGroups(int table)
    {
        var groups = (int)U32(table + 12);
        for (var g = 0; g < groups; g++)
        {
            int group = table + 16 + 12 * g, first = (int)U32(group), last = (int)U32(group + 4), glyph = (int)U32(group + 8);
            for (var c = first; c <= last; c++)
            {
                glyphs.TryAdd(c, glyph + c - first);
            }
        }
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at, 2));

    private int S16(int at) => BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(at, 2));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at, 4));
}
