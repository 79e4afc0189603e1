namespace Linewright.Paper;

/// <summary>The type that every page is set in: its measures, and the part of it that a file has to carry.</summary>
/// <remarks>
/// Inter, by the Inter Project Authors, under the SIL Open Font License 1.1, which lies beside it in fonts/OFL.txt.
/// Letters stand at their own widths; pairs are not drawn closer, so that every reader agrees on the length of a line.
/// </remarks>
public sealed class Typeface
{
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

    /// <summary>Width of a line of text, as a share of the body.</summary>
    public double WidthOf(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Share(text.EnumerateRunes().Sum(rune => file.AdvanceOf(file.GlyphOf(rune.Value))));
    }

    /// <summary>A TrueType file of some characters only; the same characters give the same bytes.</summary>
    public TypefaceSubset Subset(IEnumerable<int> characters) => SubsetWriter.Write(file, [.. characters]);

    private double Share(int units) => (double)units / file.UnitsPerBody;
}
