using System.Collections.Immutable;
using System.Text;
using Linewright.Paper;

namespace Linewright.Files;

/// <summary>A type in a PDF file: the glyphs that its text needs, with the way back from glyphs to characters.</summary>
/// <remarks>Source: ISO 32000-1:2008, 9.7 composite fonts, 9.9 embedded font programs, 9.10.3 ToUnicode.</remarks>
/// <param name="Key">Its name in a page's resources.</param>
/// <param name="Reference">Its object.</param>
/// <param name="Glyphs">The glyph of each character.</param>
internal sealed record PdfFace(string Key, int Reference, ImmutableSortedDictionary<int, int> Glyphs)
{
    // A table of this many entries at most may stand in one block. Source: Adobe technical note 5411, ToUnicode mapping files.
    private const int BlockEntries = 100;

    /// <summary>Adds a type to a file.</summary>
    public static PdfFace Write(PdfObjects file, Typeface face, string key, IEnumerable<int> characters)
    {
        var subset = face.Subset(characters);

        // Six letters say that this is a part of a type.
        var name = $"LINEWR+{face.Name}";
        var program = file.AddStream(FormattableString.Invariant($" /Length1 {subset.File.Length}"), [.. subset.File]);
        var box = face.Box;

        // Flag 32: Latin letters. The thickness of stems is not in the file; readers only use it for a stand-in.
        var descriptor = file.Add(FormattableString.Invariant(
            $"<< /Type /FontDescriptor /FontName /{name} /Flags 32 /FontBBox [{box.Left:0} {box.Low:0} {box.Right:0} {box.High:0}] /ItalicAngle 0 /Ascent {1000 * face.AscentShare:0} /Descent {-1000 * face.DescentShare:0} /CapHeight {1000 * face.CapitalShare:0} /StemV 80 /FontFile2 {program} 0 R >>"));
        var widths = string.Join(' ', subset.Widths.Select(width => FormattableString.Invariant($"{width:0.###}")));
        var descendant = file.Add(FormattableString.Invariant(
            $"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /{name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor {descriptor} 0 R /CIDToGIDMap /Identity /W [0 [{widths}]] >>"));
        var back = file.AddStream("", Encoding.ASCII.GetBytes(BackToCharacters(subset.Glyphs)));
        var font = file.Add(FormattableString.Invariant(
            $"<< /Type /Font /Subtype /Type0 /BaseFont /{name} /Encoding /Identity-H /DescendantFonts [{descendant} 0 R] /ToUnicode {back} 0 R >>"));
        return new PdfFace(key, font, subset.Glyphs);
    }

    /// <summary>A line of text as glyphs in hexadecimal digits.</summary>
    public string Encode(string text)
        => string.Concat(text.EnumerateRunes().Select(rune => FormattableString.Invariant($"{Glyphs.GetValueOrDefault(rune.Value):X4}")));

    private static string BackToCharacters(ImmutableSortedDictionary<int, int> glyphs)
    {
        var map = new StringBuilder("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");

        // Two characters may share a glyph: the first stands for both.
        foreach (var block in glyphs.GroupBy(pair => pair.Value).Select(group => group.First()).Chunk(BlockEntries))
        {
            map.Append(FormattableString.Invariant($"{block.Length} beginbfchar\n"));
            foreach (var (character, glyph) in block)
            {
                // What the type cannot write has the one glyph that says so, and no character back.
                var utf16 = Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(char.ConvertFromUtf32(glyph == 0 ? Rune.ReplacementChar.Value : character)));
                map.Append(FormattableString.Invariant($"<{glyph:X4}> <{utf16}>\n"));
            }

            map.Append("endbfchar\n");
        }

        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend").ToString();
    }
}
