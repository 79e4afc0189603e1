using System.Buffers.Binary;
using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>Writes a TrueType file that holds only some glyphs of another.</summary>
/// <remarks>
/// Source: OpenType specification 1.9. Glyph 0 stays, then those of the characters in rising order, then the parts that
/// accented letters are put together from. Hinting stays, pairs and substitutions do not.
/// </remarks>
internal static class SubsetWriter
{
    // Flags of a part in a glyph that is put together from others. Source: OpenType specification, glyf.
    private const int WordArguments = 1, HasScale = 8, HasMore = 0x20, HasTwoScales = 0x40, HasMatrix = 0x80;

    public static TypefaceSubset Write(TrueTypeFile file, ImmutableSortedSet<int> characters)
    {
        // Number the glyphs; a part may itself be put together.
        List<int> old = [0];
        var renumbered = new Dictionary<int, int> { [0] = 0 };
        int Number(int glyph)
        {
            if (renumbered.TryAdd(glyph, old.Count))
            {
                old.Add(glyph);
            }

            return renumbered[glyph];
        }

        var glyphs = characters.Where(c => file.GlyphOf(c) != 0).ToImmutableSortedDictionary(c => c, c => Number(file.GlyphOf(c)));
        var outlines = new List<byte[]>();
        for (var i = 0; i < old.Count; i++)
        {
            outlines.Add(Renumbered(file.OutlineOf(old[i]).ToArray(), Number));
        }

        var font = Assemble(file, old, outlines, glyphs);
        return new TypefaceSubset(
            [.. font], glyphs, [.. old.Select(glyph => 1000.0 * file.AdvanceOf(glyph) / file.UnitsPerBody)]);
    }

    private static byte[] Renumbered(byte[] outline, Func<int, int> number)
    {
        if (outline.Length == 0 || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
        {
            return outline;
        }

        int at = 10, flags;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
            var part = outline.AsSpan(at + 2, 2);
            BinaryPrimitives.WriteUInt16BigEndian(part, (ushort)number(BinaryPrimitives.ReadUInt16BigEndian(part)));
            at += 4 + ((flags & WordArguments) != 0 ? 4 : 2);
            at += (flags & HasScale) != 0 ? 2 : (flags & HasTwoScales) != 0 ? 4 : (flags & HasMatrix) != 0 ? 8 : 0;
        }
        while ((flags & HasMore) != 0);
        return outline;
    }

    private static byte[] Assemble(TrueTypeFile file, List<int> old, List<byte[]> outlines, ImmutableSortedDictionary<int, int> glyphs)
    {
        MemoryStream glyf = new(), loca = new(), hmtx = new();
        foreach (var outline in outlines)
        {
            Put32(loca, (uint)glyf.Length);
            glyf.Write(outline);
            Pad(glyf);
        }

        Put32(loca, (uint)glyf.Length);
        foreach (var glyph in old)
        {
            Put16(hmtx, file.AdvanceOf(glyph));
            Put16(hmtx, file.BearingOf(glyph));
        }

        byte[] head = file.Table("head").ToArray(), hhea = file.Table("hhea").ToArray(), maxp = file.Table("maxp").ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), 0);
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1);
        BinaryPrimitives.WriteUInt16BigEndian(hhea.AsSpan(34), (ushort)old.Count);
        BinaryPrimitives.WriteUInt16BigEndian(maxp.AsSpan(4), (ushort)old.Count);

        // No names of glyphs: version 3 of the table.
        var post = file.Table("post")[..32].ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(post, 0x00030000);
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["OS/2"] = file.Table("OS/2").ToArray(),
            ["cmap"] = Characters(glyphs),
            ["glyf"] = glyf.ToArray(),
            ["head"] = head,
            ["hhea"] = hhea,
            ["hmtx"] = hmtx.ToArray(),
            ["loca"] = loca.ToArray(),
            ["maxp"] = maxp,
            ["name"] = file.Table("name").ToArray(),
            ["post"] = post,
        };
        foreach (var hinting in (string[])["cvt ", "fpgm", "prep"])
        {
            if (file.Table(hinting).Length > 0)
            {
                tables.Add(hinting, file.Table(hinting).ToArray());
            }
        }

        return Bind(tables);
    }

    private static byte[] Bind(SortedDictionary<string, byte[]> tables)
    {
        var font = new MemoryStream();
        var power = (int)Math.Log2(tables.Count);
        Put32(font, 0x00010000);
        Put16(font, tables.Count);
        Put16(font, 16 << power);
        Put16(font, power);
        Put16(font, 16 * tables.Count - (16 << power));
        var offset = 12 + 16 * tables.Count;
        var headAt = 0;
        foreach (var (tag, table) in tables)
        {
            font.Write(System.Text.Encoding.ASCII.GetBytes(tag));
            Put32(font, Sum(table));
            Put32(font, (uint)offset);
            Put32(font, (uint)table.Length);
            headAt = tag == "head" ? offset : headAt;
            offset += (table.Length + 3) / 4 * 4;
        }

        foreach (var table in tables.Values)
        {
            font.Write(table);
            Pad(font);
        }

        // Source: OpenType specification, head, checksumAdjustment.
        var bytes = font.ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(bytes.AsSpan(headAt + 8), 0xB1B0AFBA - Sum(bytes));
        return bytes;
    }

    /// <summary>The table of characters in segments of neighbours whose glyphs are neighbours too.</summary>
    private static byte[] Characters(ImmutableSortedDictionary<int, int> glyphs)
    {
        var segments = new List<(int First, int Last, int Delta)>();
        foreach (var (character, glyph) in glyphs.Where(pair => pair.Key < 0xFFFF))
        {
            if (segments.Count > 0 && segments[^1] is var last && last.Last + 1 == character && last.Delta == glyph - character)
            {
                segments[^1] = last with { Last = character };
            }
            else
            {
                segments.Add((character, character, glyph - character));
            }
        }

        segments.Add((0xFFFF, 0xFFFF, 1));
        var count = segments.Count;
        var power = (int)Math.Log2(count);
        var table = new MemoryStream();
        foreach (var word in (int[])[0, 1, 3, 1, 0, 12, 4, 16 + 8 * count, 0, 2 * count, 2 << power, power, 2 * count - (2 << power)])
        {
            Put16(table, word);
        }

        segments.ForEach(segment => Put16(table, segment.Last));
        Put16(table, 0);
        segments.ForEach(segment => Put16(table, segment.First));
        segments.ForEach(segment => Put16(table, segment.Delta));
        segments.ForEach(_ => Put16(table, 0));
        return table.ToArray();
    }

    private static uint Sum(byte[] bytes)
    {
        uint sum = 0;
        for (var i = 0; i < bytes.Length; i += 4)
        {
            for (var k = 0; k < 4; k++)
            {
                sum += i + k < bytes.Length ? (uint)bytes[i + k] << (24 - 8 * k) : 0;
            }
        }

        return sum;
    }

    private static void Pad(MemoryStream stream)
    {
        while (stream.Length % 4 != 0)
        {
            stream.WriteByte(0);
        }
    }

    private static void Put16(MemoryStream stream, int value)
    {
        stream.WriteByte((byte)(value >> 8));
        stream.WriteByte((byte)value);
    }

    private static void Put32(MemoryStream stream, uint value)
    {
        Put16(stream, (int)(value >> 16));
        Put16(stream, (int)(value & 0xFFFF));
    }
}
