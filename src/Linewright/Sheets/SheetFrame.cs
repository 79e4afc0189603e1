using System.Collections.Immutable;
using System.Globalization;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>The frame and the title block that every page of a sheet has.</summary>
/// <remarks>
/// Standard: ISO 5457: frame 20 mm from the left edge, for filing, and 10 mm from the others, with marks at the middles; the
/// marks end at the frame, so that all of the field is free.
/// Standard: ISO 7200: title block at the lower right, at most 180 mm wide.
/// </remarks>
/// <param name="Paper">The page, its long side across.</param>
/// <param name="Projection">How the views are laid out.</param>
/// <param name="Name">The piece.</param>
/// <param name="Metal">Alloy with fineness.</param>
/// <param name="Stones">Stones in one line.</param>
/// <param name="Date">As given, or null.</param>
internal sealed record SheetFrame(PaperSize Paper, Projection Projection, string Name, string Metal, string Stones, DateOnly? Date)
{
    private const double FilingMm = 20, EdgeMm = 10, TitleWidthMm = 180, TitleHeightMm = 22;

    // The least lettering, and the largest of which a field of the title block holds two lines.
    private const double SmallestMm = 1.8, TwoLinesMm = 2.2;

    /// <summary>All within the frame.</summary>
    public PaperBox Inside => new(FilingMm, EdgeMm, Paper.WidthMm - EdgeMm, Paper.HeightMm - EdgeMm);

    /// <summary>Within the frame, over the title block, with a little air.</summary>
    public PaperBox Field => new(Inside.Left + 3, Inside.Top + 3, Inside.Right - 3, Inside.Bottom - TitleHeightMm - 3);

    /// <summary>Left of the title block, for a note.</summary>
    public PaperBox Corner => new(Inside.Left + 3, Inside.Bottom - TitleHeightMm, Inside.Right - TitleWidthMm - 1, Inside.Bottom - 2);

    /// <summary>A page with its frame and title block.</summary>
    /// <param name="title">What is on this page.</param>
    /// <param name="scale">Its scale as text.</param>
    /// <param name="number">From 1.</param>
    /// <param name="count">Of how many.</param>
    /// <param name="content">What is drawn.</param>
    public Page Page(string title, string scale, int number, int count, IEnumerable<Mark> content)
    {
        var inside = Inside;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        marks.Add(Stroke.Rectangle(inside, SheetPens.Frame));
        foreach (var (from, to) in new (PaperPoint, PaperPoint)[]
        {
            (new(Paper.WidthMm / 2, 5), new(Paper.WidthMm / 2, EdgeMm)),
            (new(Paper.WidthMm / 2, Paper.HeightMm - 5), new(Paper.WidthMm / 2, Paper.HeightMm - EdgeMm)),
            (new(5, Paper.HeightMm / 2), new(FilingMm, Paper.HeightMm / 2)),
            (new(Paper.WidthMm - 5, Paper.HeightMm / 2), new(Paper.WidthMm - EdgeMm, Paper.HeightMm / 2)),
        })
        {
            // Centring marks: how a sheet is laid on a copier.
            marks.Add(new Stroke(from, to, SheetPens.Frame));
        }

        marks.AddRange(content);
        double left = inside.Right - TitleWidthMm, top = inside.Bottom - TitleHeightMm, middle = top + TitleHeightMm / 2;
        marks.Add(Stroke.Rectangle(new PaperBox(left, top, inside.Right, inside.Bottom), SheetPens.Wide));
        marks.Add(new Stroke(new PaperPoint(left, middle), new PaperPoint(inside.Right, middle), SheetPens.Narrow));
        Field(left, top, 84, "piece", Name, SheetPens.Heading);
        Field(left + 84, top, 66, "alloy, nominal fineness", Metal, SheetPens.Text);
        Field(left + 150, top, 30, "date", Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", SheetPens.Text);
        Field(left, middle, 48, "content", title, SheetPens.Text);
        Field(left + 48, middle, 58, "stones", Stones, SheetPens.Text);
        Field(left + 106, middle, 24, "scale; unit", $"{scale}; mm", SheetPens.Text);
        Field(left + 130, middle, 26, ProjectionSign.NameOf(Projection), "", SheetPens.Text);
        marks.AddRange(ProjectionSign.At(new PaperPoint(left + 143, middle + 7.3), Projection));
        Field(left + 156, middle, 24, "sheet", string.Create(CultureInfo.InvariantCulture, $"{number} of {count}"), SheetPens.Text);
        return new Page(Paper, marks.ToImmutable());

        void Field(double x, double y, double width, string name, string value, TextStyle style)
        {
            marks.Add(new Stroke(new PaperPoint(x, y), new PaperPoint(x, y + TitleHeightMm / 2), SheetPens.Narrow));
            marks.Add(new Label(new PaperPoint(x + 1.2, y + 3), name, SheetPens.Small));

            // What is too long for its field is set smaller, or in two lines; what even those do not hold ends in dots.
            var (lines, set) = Fitted(value, style, width - 2.4, 1) ?? Fitted(value, new TextStyle(TwoLinesMm, style.Weight), width - 2.4, 2)
                ?? (Paragraph.Lines(value, new TextStyle(SmallestMm, style.Weight), width - 2.4), new TextStyle(SmallestMm, style.Weight));
            if (lines.Length > 2)
            {
                var last = lines[1];
                while (set.WidthOf(last + "\u2026") > width - 2.4)
                {
                    last = last[..^(last.Length > 1 && char.IsLowSurrogate(last[^1]) ? 2 : 1)];
                }

                lines = [lines[0], last + "\u2026"];
            }

            for (var i = 0; i < lines.Length && value.Length > 0; i++)
            {
                marks.Add(new Label(new PaperPoint(x + 1.2, lines.Length == 1 ? y + 8.6 : y + 6.2 + i * 3.4), lines[i], set));
            }
        }
    }

    // The largest lettering from a style down in which a text takes no more lines.
    private static (ImmutableArray<string> Lines, TextStyle Style)? Fitted(string text, TextStyle style, double widthMm, int most)
    {
        for (; ; style = new TextStyle(Math.Max(SmallestMm, style.CapitalMm - 0.1), style.Weight))
        {
            var lines = Paragraph.Lines(text, style, widthMm);
            if (lines.Length <= most)
            {
                return (lines, style);
            }

            if (style.CapitalMm <= SmallestMm)
            {
                return null;
            }
        }
    }
}
