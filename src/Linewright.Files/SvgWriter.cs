using System.Globalization;
using System.Text;
using System.Xml;
using Linewright.Paper;

namespace Linewright.Files;

/// <summary>Writes one page as SVG 1.1 in millimetres. Text stays text; its type is embedded for readers that take it.</summary>
/// <remarks>
/// Source: W3C Scalable Vector Graphics 1.1, second edition (2011). Every line of text carries its length, so that a reader
/// that puts another type in its place still keeps within it. The same page gives the same bytes.
/// </remarks>
public static class SvgWriter
{
    private const string Space = "http://www.w3.org/2000/svg";

    /// <summary>Writes a page and leaves the stream open.</summary>
    /// <param name="stream">Where to write.</param>
    /// <param name="page">The page.</param>
    /// <param name="title">What it is, for screen readers and windows.</param>
    public static void Write(Stream stream, Page page, string title)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(page);
        var settings = new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true, IndentChars = "", NewLineChars = "\n", CloseOutput = false };
        using var xml = XmlWriter.Create(stream, settings);
        xml.WriteStartDocument();
        xml.WriteStartElement("svg", Space);
        Put(xml, "width", $"{page.Size.WidthMm:0.###}mm");
        Put(xml, "height", $"{page.Size.HeightMm:0.###}mm");
        Put(xml, "viewBox", $"0 0 {page.Size.WidthMm:0.###} {page.Size.HeightMm:0.###}");
        Put(xml, "role", $"img");
        xml.WriteElementString("title", Space, title);
        xml.WriteElementString("style", Space, Style(page));
        xml.WriteStartElement("rect", Space);
        Put(xml, "width", $"100%");
        Put(xml, "height", $"100%");
        Put(xml, "fill", $"#fff");
        xml.WriteEndElement();
        for (var first = 0; first < page.Marks.Length;)
        {
            first = page.Marks[first] is Stroke stroke ? Strokes(xml, page, first, stroke.Pen) : Other(xml, page.Marks[first], first);
        }

        xml.WriteEndElement();
        xml.WriteEndDocument();
    }

    // Strokes that follow each other with one pen are one path.
    private static int Strokes(XmlWriter xml, Page page, int first, Pen pen)
    {
        var path = new StringBuilder();
        var next = first;
        for (; next < page.Marks.Length && page.Marks[next] is Stroke stroke && stroke.Pen == pen; next++)
        {
            Path(path, stroke.Points, stroke.IsClosed);
        }

        xml.WriteStartElement("path", Space);
        Put(xml, "fill", $"none");
        Put(xml, "stroke", $"#000");
        Put(xml, "stroke-width", $"{pen.WidthMm:0.###}");
        Put(xml, "stroke-linejoin", $"round");
        if (pen.Style == LineStyle.Solid)
        {
            Put(xml, "stroke-linecap", $"round");
        }
        else
        {
            Put(xml, "stroke-dasharray", $"{string.Join(' ', pen.DashesMm.Select(length => length.ToString("0.###", CultureInfo.InvariantCulture)))}");
        }

        Put(xml, "d", $"{path}");
        xml.WriteEndElement();
        return next;
    }

    private static int Other(XmlWriter xml, Mark mark, int index)
    {
        switch (mark)
        {
            case Area area:
                var path = new StringBuilder();
                foreach (var loop in area.Loops)
                {
                    Path(path, loop, true);
                }

                var grey = (int)Math.Round(255 * area.Grey);
                xml.WriteStartElement("path", Space);
                Put(xml, "fill", $"#{grey:x2}{grey:x2}{grey:x2}");
                Put(xml, "fill-rule", $"evenodd");
                Put(xml, "d", $"{path}");
                xml.WriteEndElement();
                break;
            case Label label:
                var start = label.Start;
                xml.WriteStartElement("text", Space);
                if (label.Style.Weight == TextWeight.Strong)
                {
                    Put(xml, "class", $"s");
                }

                if (label.IsUpward)
                {
                    Put(xml, "transform", $"translate({start.X:0.###} {start.Y:0.###}) rotate(-90)");
                }
                else
                {
                    Put(xml, "x", $"{start.X:0.###}");
                    Put(xml, "y", $"{start.Y:0.###}");
                }

                Put(xml, "font-size", $"{label.Style.BodyMm:0.####}");
                Put(xml, "textLength", $"{label.WidthMm:0.###}");
                Put(xml, "lengthAdjust", $"spacingAndGlyphs");
                xml.WriteString(label.Text);
                xml.WriteEndElement();
                break;
            default:
                throw new InvalidOperationException($"a {mark.GetType().Name} has no form in SVG");
        }

        return index + 1;
    }

    private static string Style(Page page)
    {
        var style = new StringBuilder();
        var document = new PaperDocument("", [page]);
        foreach (var (weight, number) in ((TextWeight, int)[])[(TextWeight.Regular, 400), (TextWeight.Strong, 600)])
        {
            var characters = document.CharactersIn(weight);
            if (!characters.IsEmpty)
            {
                var font = Convert.ToBase64String([.. Typeface.Of(weight).Subset(characters).File]);
                style.Append(CultureInfo.InvariantCulture, $"@font-face{{font-family:Sheet;font-weight:{number};src:url(data:font/ttf;base64,{font})}}\n");
            }
        }

        return style.Append("text{font-family:Sheet,Inter,Arial,sans-serif;font-weight:400;font-kerning:none;fill:#000}text.s{font-weight:600}").ToString();
    }

    private static void Path(StringBuilder path, IReadOnlyList<PaperPoint> points, bool isClosed)
    {
        for (var i = 0; i < points.Count; i++)
        {
            path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{points[i].X:0.###} {points[i].Y:0.###}");
        }

        path.Append(isClosed ? "Z" : "");
    }

    private static void Put(XmlWriter xml, string name, FormattableString value) => xml.WriteAttributeString(name, value.ToString(CultureInfo.InvariantCulture));
}
