using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>A small TrueType file with the glyphs of some characters, renumbered from 1.</summary>
/// <param name="File">The file.</param>
/// <param name="Glyphs">The glyph of each character.</param>
/// <param name="Widths">Advance of each glyph in thousandths of the body, glyph 0 first.</param>
public sealed record TypefaceSubset(ImmutableArray<byte> File, ImmutableSortedDictionary<int, int> Glyphs, ImmutableArray<double> Widths);
