using System.Globalization;
using System.Xml;
using Linewright.Files;
using Linewright.Paper;

namespace Linewright.Tests.Files;

/// <summary>Pages and the formats they are written in.</summary>
public class PaperTests
{
    private static readonly TextStyle Body = new(2.5), Heading = new(5, TextWeight.Strong);

    [Fact]
    public void A_page_written_twice_has_the_same_bytes()
    {
        Assert.Equal(Pdf(Sample()), Pdf(Sample()));
        Assert.Equal(Svg(Sample().Pages[0]), Svg(Sample().Pages[0]));
    }

    [Theory]
    [InlineData(TextWeight.Regular)]
    [InlineData(TextWeight.Strong)]
    public void The_type_can_write_every_sign_of_a_drawing(TextWeight weight)
        => Assert.DoesNotContain("\u00b0\u00b1\u00d7\u00d8\u00b5\u2013\u2019\u20ac\u00a3\u00a5\u00fc\u00e9\u2264\u2265\u2248".EnumerateRunes(), rune => !Typeface.Of(weight).Has(rune.Value));

    [Theory]
    [InlineData("港口的灯火", "[?]")]
    [InlineData("港口 \u2728 für Žofia", "[?] [?] für Žofia")]
    [InlineData("Ωμέγα, Ёлка, ‰", "Ωμέγα, Ёлка, ‰")]
    [InlineData("a\u200db\ufe0f", "ab")] // A joiner and a selector of a letter's look: nobody sees them.
    public void Letters_that_the_type_lacks_never_print_as_boxes(string name, string printed)
    {
        foreach (var weight in (TextWeight[])[TextWeight.Regular, TextWeight.Strong])
        {
            var style = new TextStyle(2.5, weight);
            var label = new Label(new PaperPoint(10, 10), name, style);
            Assert.Equal(printed, label.Text);
            Assert.Equal(style.WidthOf(printed), style.WidthOf(name), 9);
            Assert.Equal([printed], Paragraph.Lines(name, style, 100).Select(line => new Label(label.At, line, style).Text));
            var page = new Page(PaperSize.A4, [label]);
            Assert.DoesNotContain(new PaperDocument("", [page]).CharactersIn(weight), character => !style.Face.Has(character));
            var svg = new XmlDocument();
            svg.Load(new MemoryStream(Svg(page)));
            Assert.Equal(printed, svg.GetElementsByTagName("text")[0]!.InnerText);
        }
    }

    [Fact]
    public void What_cannot_be_printed_is_said_in_letters_that_can()
    {
        Assert.Null(UnprintedLetters.Sentence("the name", "Straußenfeder – Ωμέγα"));
        Assert.Null(UnprintedLetters.Sentence("the name", null));
        var said = UnprintedLetters.Sentence("the name", "港口的灯火港 \u2728\ud83d\ude00");
        Assert.StartsWith("Paper cannot show letters of the name (U+6E2F, U+53E3, U+7684, U+706F, U+706B, U+2728 and 1 more): they stand as [?]", said, StringComparison.Ordinal);
        Assert.Equal(said, Typeface.Of(TextWeight.Regular).Printable(said!));
        Assert.Contains("a letter of the name (U+6E2F): it stands", UnprintedLetters.Sentence("the name", "a港"), StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_of_a_paragraph_keep_their_width_and_lose_no_word()
    {
        const string text = "Licensed practice, hallmarking law and local codes come first; fineness here is nominal.";
        var lines = Paragraph.Lines(text, Body, 40);
        Assert.All(lines, line => Assert.InRange(Body.WidthOf(line), 1, 40));
        Assert.Equal(text, string.Join(' ', lines));
        Assert.True(lines.Length > 2);
        Assert.All(Paragraph.Lines(new string('W', 60), Body, 40), line => Assert.InRange(Body.WidthOf(line), 1, 40));
    }

    [Fact]
    public void A_line_never_begins_with_a_sign_and_no_character_is_cut_in_two()
    {
        var style = new TextStyle(1.8);
        for (var width = 4.0; width < 40; width += 0.5)
        {
            var lines = Paragraph.Lines("Lead is limited to 0.05 %. A wall of 0.8 \u2030 or \u2013 more. \ud840\udc00\ud840\udc00\ud840\udc00\ud840\udc00\ud840\udc00\ud840\udc00", style, width);
            Assert.DoesNotContain(lines, line => char.IsLowSurrogate(line[0]) || char.IsHighSurrogate(line[^1]));

            // Where a word and its sign find room in one line they share it.
            if (width > style.WidthOf("0.05 %."))
            {
                Assert.DoesNotContain(lines, line => line[0] is '%' or '\u2030' or '\u2013');
            }
        }
    }

    [Fact]
    public void A_table_that_does_not_fit_goes_on_with_the_rows_that_are_left()
    {
        var table = new Table(
            [new("name", 30), new("count", 15, Align.Right)],
            [.. Enumerable.Range(0, 20).Select(i => (System.Collections.Immutable.ImmutableArray<string>)[FormattableString.Invariant($"row {i}"), i.ToString(CultureInfo.InvariantCulture)])],
            Body);
        var piece = table.Set(10, 10, 60);
        Assert.InRange(piece.BottomMm, 50, 60);
        Assert.InRange(piece.Rest.Rows.Length, 1, 19);
        var rest = piece.Rest.Set(10, 10);
        Assert.Empty(rest.Rest.Rows);
        var said = piece.Marks.Concat(rest.Marks).OfType<Label>().Select(label => label.Text).Where(text => text.StartsWith("row", StringComparison.Ordinal));
        Assert.Equal(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"row {i}")), said);
        Assert.All(piece.Marks, mark => Assert.True(new PaperBox(10, 10, 55, 60).Grown(0.01).Contains(mark.Box), $"{mark}"));
    }

    [Fact]
    public void Outside_readers_find_a_pdf_sound_and_read_its_text()
    {
        using var file = new ScratchFile("sample.pdf", stream => PdfWriter.Write(stream, Sample()));
        OutsideTools.CheckPdf(file.Path);
        var text = OutsideTools.PdfText(file.Path);
        Assert.Contains("Harbour <lights> & more \u00d8 3.00 \u00b1 0.05", text, StringComparison.Ordinal);
        Assert.Contains("reads upward", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_svg_is_well_formed_and_has_the_text_as_text()
    {
        var page = new XmlDocument();
        page.Load(new MemoryStream(Svg(Sample().Pages[0])));
        var words = page.GetElementsByTagName("text").Cast<XmlElement>().Select(text => text.InnerText);
        Assert.Contains("Harbour <lights> & more \u00d8 3.00 \u00b1 0.05", words);
    }

    internal static PaperDocument Sample() => new("Sample", [new Page(PaperSize.A4.Landscape,
    [
        Stroke.Rectangle(PaperSize.A4.Landscape.Box.Grown(-10), new Pen(0.7)),
        new Stroke(new PaperPoint(20, 40), new PaperPoint(120, 40), new Pen(0.35, LineStyle.Dashed)),
        new Stroke(new PaperPoint(20, 45), new PaperPoint(120, 45), new Pen(0.18, LineStyle.Chain)),
        Stroke.Circle(new PaperPoint(200, 100), 30, new Pen(0.35)),
        Area.Polygon(new(20, 60), new(40, 60), new(30, 80)),
        new Label(new PaperPoint(20, 30), "Harbour <lights> & more \u00d8 3.00 \u00b1 0.05", Heading),
        new Label(new PaperPoint(150, 150), "reads upward", Body, Align.Centre, true),
        .. new Table([new("part", 30), new("count", 20, Align.Right)], [["link", "48"], ["box", "1"]], Body).Set(20, 100).Marks,
    ])]);

    internal static byte[] Pdf(PaperDocument document)
    {
        using var stream = new MemoryStream();
        PdfWriter.Write(stream, document);
        return stream.ToArray();
    }

    internal static byte[] Svg(Page page)
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(stream, page, "Sample");
        return stream.ToArray();
    }
}
