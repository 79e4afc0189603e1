using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Quote;

/// <summary>One column of text down a sheet, from page to page; no line is parted from its page's foot by less than a margin.</summary>
internal sealed class PageColumn
{
    private readonly PaperSize size;
    private readonly double marginMm;
    private readonly List<List<Mark>> pages = [[]];
    private double y;
    private (string Words, TextStyle Style)? foot;

    public PageColumn(PaperSize size, double marginMm)
    {
        this.size = size;
        this.marginMm = marginMm;
        y = marginMm;
    }

    private double WidthMm => size.WidthMm - 2 * marginMm;

    private double LowestMm => size.HeightMm - marginMm - 6;

    /// <summary>Free paper, mm; none at the top of a further page.</summary>
    public void Space(double mm) => y += y > marginMm || pages.Count == 1 ? mm : 0;

    /// <summary>Running text.</summary>
    public void Text(string text, TextStyle style)
    {
        foreach (var line in Paragraph.Lines(text, style, WidthMm))
        {
            Room(style.LineMm);
            pages[^1].Add(new Label(new PaperPoint(marginMm, y + style.CapitalMm), line, style));
            y += style.LineMm;
        }
    }

    /// <summary>A table of names and values.</summary>
    public void Rows(ImmutableArray<ImmutableArray<string>> rows, TextStyle style, double nameMm)
    {
        var table = new Table([new TableColumn("", nameMm), new TableColumn("", WidthMm - nameMm)], rows, style) { HasHeading = false, PaddingMm = 1.5 };
        while (!table.Rows.IsEmpty)
        {
            var piece = table.Set(marginMm, y, LowestMm);
            pages[^1].AddRange(piece.Marks);
            (y, table) = (piece.BottomMm, piece.Rest);
            Room(table.Rows.IsEmpty ? 0 : double.PositiveInfinity);
        }
    }

    /// <summary>What stands at the foot of every page, with its number.</summary>
    public void Foot(string words, TextStyle style) => foot = (words, style);

    /// <summary>The pages.</summary>
    public ImmutableArray<Page> Pages() => [.. pages.Select((marks, index) => new Page(size, [.. marks, .. FootOf(index)]))];

    private IEnumerable<Mark> FootOf(int index)
    {
        if (foot is not var (words, style))
        {
            yield break;
        }

        var at = size.HeightMm - marginMm;
        yield return new Stroke(new PaperPoint(marginMm, at - style.CapitalMm - 2), new PaperPoint(size.WidthMm - marginMm, at - style.CapitalMm - 2), new Pen(0.18));
        yield return new Label(new PaperPoint(marginMm, at), words, style);
        yield return new Label(new PaperPoint(size.WidthMm - marginMm, at), FormattableString.Invariant($"page {index + 1} of {pages.Count}"), style, Align.Right);
    }

    private void Room(double heightMm)
    {
        if (y + heightMm > LowestMm)
        {
            pages.Add([]);
            y = marginMm;
        }
    }
}
