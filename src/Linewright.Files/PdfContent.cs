using System.Globalization;
using System.Text;
using Linewright.Paper;

namespace Linewright.Files;

/// <summary>The drawing operators of one page, in mm from the upper left corner as the page has them.</summary>
/// <remarks>Source: ISO 32000-1:2008, 8.4 graphics state, 8.5 paths, 9.4 text. Strokes that share a pen are drawn as one path.</remarks>
internal sealed class PdfContent(Page page, Dictionary<TextWeight, PdfFace> faces)
{
    private const double PointsPerMm = 72 / 25.4;

    private readonly StringBuilder text = new();

    /// <summary>The operators.</summary>
    public string Text()
    {
        // Millimetres, y down.
        Put($"{PointsPerMm:0.#########} 0 0 {-PointsPerMm:0.#########} 0 {page.Size.HeightMm * PointsPerMm:0.######} cm 1 j\n");
        Pen? drawing = null;
        foreach (var mark in page.Marks)
        {
            if (drawing is not null && (mark is not Stroke next || next.Pen != drawing))
            {
                text.Append("S\n");
                drawing = null;
            }

            switch (mark)
            {
                case Stroke stroke:
                    if (drawing is null)
                    {
                        Take(stroke.Pen);
                        drawing = stroke.Pen;
                    }

                    Path(stroke.Points, stroke.IsClosed);
                    break;
                case Area area:
                    Put($"{area.Grey:0.###} g\n");
                    foreach (var loop in area.Loops)
                    {
                        Path(loop, true);
                    }

                    text.Append("f*\n");
                    break;
                case Label label:
                    Write(label);
                    break;
                default:
                    throw new InvalidOperationException($"a {mark.GetType().Name} has no form in PDF");
            }
        }

        if (drawing is not null)
        {
            text.Append("S\n");
        }

        return text.ToString();
    }

    // Continuous lines end round, so that corners of separate strokes close; broken ones end square, as long as they are meant to be.
    private void Take(Pen pen)
    {
        var dashes = string.Join(' ', pen.DashesMm.Select(length => length.ToString("0.###", CultureInfo.InvariantCulture)));
        Put($"{pen.WidthMm:0.###} w {(pen.Style == LineStyle.Solid ? 1 : 0)} J [{dashes}] 0 d\n");
    }

    private void Path(IReadOnlyList<PaperPoint> points, bool isClosed)
    {
        for (var i = 0; i < points.Count; i++)
        {
            Put($"{points[i].X:0.###} {points[i].Y:0.###} {(i == 0 ? 'm' : 'l')}\n");
        }

        if (isClosed)
        {
            text.Append("h\n");
        }
    }

    private void Write(Label label)
    {
        var face = faces[label.Style.Weight];
        var start = label.Start;
        var turn = label.IsUpward ? "0 -1 -1 0" : "1 0 0 -1";
        Put($"0 g BT /{face.Key} {label.Style.BodyMm:0.####} Tf {turn} {start.X:0.###} {start.Y:0.###} Tm <{face.Encode(label.Text)}> Tj ET\n");
    }

    private void Put(FormattableString part) => text.Append(part.ToString(CultureInfo.InvariantCulture));
}
