using System.Globalization;
using System.Text;

namespace Linewright.Paper;

/// <summary>The type that every page is set in: its measures, and the part of it that a file has to carry.</summary>
/// <remarks>
/// Inter, by the Inter Project Authors, under the SIL Open Font License 1.1, which lies beside it in fonts/OFL.txt.
/// Letters stand at their own widths; pairs are not drawn closer, so that every reader agrees on the length of a line.
/// </remarks>
public sealed class Typeface
{
    /// <summary>What stands on paper where letters are that the type lacks.</summary>
    public const string Unprinted = "[?]";

    private static readonly Lazy<Typeface> Regular = new(() => new Typeface("Inter-Regular"));
    private static readonly Lazy<Typeface> Strong = new(() => new Typeface("Inter-SemiBold"));

    private readonly TrueTypeFile file;

    private Typeface(string name)
    {
        Name = name;
        var resource = $"fonts/{name}.ttf";
        using var stream = typeof(Typeface).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"{resource} is not embedded");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        file = new TrueTypeFile(bytes);
    }

    /// <summary>The type's own name, without spaces.</summary>
    public string Name { get; }

    /// <summary>Height of a capital, as a share of the body.</summary>
    public double CapitalShare => Share(file.CapitalHeight);

    /// <summary>Ascent over the foot, as a share of the body.</summary>
    public double AscentShare => Share(file.Ascent);

    /// <summary>How far the type reaches below the foot, as a share of the body; above zero.</summary>
    public double DescentShare => Share(-file.Descent);

    /// <summary>The box round all of its glyphs, in thousandths of the body, y up.</summary>
    public (double Left, double Low, double Right, double High) Box
        => (1000 * Share(file.Box.Left), 1000 * Share(file.Box.Low), 1000 * Share(file.Box.Right), 1000 * Share(file.Box.High));

    /// <summary>The type of a weight.</summary>
    public static Typeface Of(TextWeight weight) => weight == TextWeight.Strong ? Strong.Value : Regular.Value;

    /// <summary>Whether it can write a character.</summary>
    public bool Has(int character) => file.GlyphOf(character) != 0;

    /// <summary>A text as it stands on paper: letters that the type lacks give way to one <see cref="Unprinted"/> a run, never to its empty boxes.</summary>
    /// <remarks>What nobody would see anyway, such as a joiner between two letters, goes without a sign.</remarks>
    public string Printable(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (HasAll(text))
        {
            return text;
        }

        var printed = new StringBuilder();
        var isIn = false;
        foreach (var rune in text.EnumerateRunes())
        {
            var isLacking = !Has(rune.Value);
            if (isLacking && IsUnseen(rune))
            {
                continue;
            }

            printed.Append(!isLacking ? rune.ToString() : isIn ? "" : Unprinted);
            isIn = isLacking;
        }

        return printed.ToString();
    }

    /// <summary>The letters of a text that the type lacks, each once, as they come.</summary>
    public IReadOnlyList<Rune> Lacking(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return HasAll(text) ? [] : [.. text.EnumerateRunes().Where(rune => !Has(rune.Value) && !IsUnseen(rune)).Distinct()];
    }

    /// <summary>Width of a line of text as it stands on paper, as a share of the body.</summary>
    public double WidthOf(string text) => Share(Printable(text).EnumerateRunes().Sum(rune => file.AdvanceOf(file.GlyphOf(rune.Value))));

    /// <summary>A TrueType file of some characters only; the same characters give the same bytes.</summary>
    public TypefaceSubset Subset(IEnumerable<int> characters) => SubsetWriter.Write(file, [.. characters]);

    private bool HasAll(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (!Has(rune.Value))
            {
                return false;
            }
        }

        return true;
    }

    // Joiners, marks of direction, and the selectors of a letter's look. Source: Unicode Standard 16, 23.2 to 23.4.
    private static bool IsUnseen(Rune rune) => Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format || rune.Value is >= 0xFE00 and <= 0xFE0F;

    private double Share(int units) => (double)units / file.UnitsPerBody;
}
