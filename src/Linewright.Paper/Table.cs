using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>A ruled table: a heading, rows of text that wraps in its cell, thin rules between.</summary>
/// <param name="Columns">From left to right.</param>
/// <param name="Rows">Each as many cells as there are columns.</param>
/// <param name="Text">Lettering of the cells; headings are the same, strong.</param>
public sealed record Table(ImmutableArray<TableColumn> Columns, ImmutableArray<ImmutableArray<string>> Rows, TextStyle Text)
{
    /// <summary>Rule under the heading and at the foot.</summary>
    public Pen Outer { get; init; } = new(0.35);

    /// <summary>Rule between rows.</summary>
    public Pen Inner { get; init; } = new(0.13);

    /// <summary>Free paper between a rule and the lettering, mm.</summary>
    public double PaddingMm { get; init; } = 1;

    /// <summary>Whether the headings are set; a table of names and values has none.</summary>
    public bool HasHeading { get; init; } = true;

    /// <summary>Width of all columns, mm.</summary>
    public double WidthMm => Columns.Sum(column => column.WidthMm);

    /// <summary>Height of the whole table, mm.</summary>
    public double HeightMm => (HasHeading ? HeightOf(Headings, Strong) : 0) + Rows.Sum(row => HeightOf(row, Text));

    private ImmutableArray<string> Headings => [.. Columns.Select(column => column.Heading)];

    /// <summary>Sets as many rows as fit above a lower edge, and says what is left over.</summary>
    /// <param name="left">Left edge, mm.</param>
    /// <param name="top">Upper edge, mm.</param>
    /// <param name="lowest">No row passes this, mm; the first row is set even so.</param>
    /// <exception cref="ArgumentException">A row has more or fewer cells than there are columns.</exception>
    public TablePiece Set(double left, double top, double lowest = double.PositiveInfinity)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        double y = top, right = left + WidthMm;
        if (HasHeading)
        {
            marks.AddRange(Cells(Headings, Strong, left, y));
            y += HeightOf(Headings, Strong);
        }

        marks.Add(new Stroke(new PaperPoint(left, y), new PaperPoint(right, y), Outer));
        var set = 0;
        while (set < Rows.Length)
        {
            var height = HeightOf(Rows[set], Text);
            if (set > 0 && y + height > lowest)
            {
                break;
            }

            marks.AddRange(Cells(Rows[set], Text, left, y));
            y += height;
            set++;
            marks.Add(new Stroke(new PaperPoint(left, y), new PaperPoint(right, y), set == Rows.Length ? Outer : Inner));
        }

        return new TablePiece(marks.ToImmutable(), y, this with { Rows = Rows[set..] });
    }

    private TextStyle Strong => Text with { Weight = TextWeight.Strong };

    private IEnumerable<Mark> Cells(ImmutableArray<string> row, TextStyle style, double left, double top)
    {
        if (row.Length != Columns.Length)
        {
            throw new ArgumentException(FormattableString.Invariant($"a row has {row.Length} cells under {Columns.Length} headings"), nameof(row));
        }

        var x = left;
        foreach (var (column, cell) in Columns.Zip(row))
        {
            var at = column.Align switch
            {
                Align.Left => x + PaddingMm,
                Align.Centre => x + column.WidthMm / 2,
                _ => x + column.WidthMm - PaddingMm,
            };
            var lines = Paragraph.Lines(cell, style, column.WidthMm - 2 * PaddingMm);
            for (var i = 0; i < lines.Length; i++)
            {
                if (lines[i].Length > 0)
                {
                    yield return new Label(new PaperPoint(at, top + PaddingMm + style.CapitalMm + i * style.LineMm), lines[i], style, column.Align);
                }
            }

            x += column.WidthMm;
        }
    }

    // Descenders take a third of a capital below the foot of the last line.
    private double HeightOf(ImmutableArray<string> row, TextStyle style)
    {
        var lines = Columns.Zip(row).Max(pair => Paragraph.Lines(pair.Second, style, pair.First.WidthMm - 2 * PaddingMm).Length);
        return 2 * PaddingMm + Paragraph.HeightOf(lines, Text) + Text.CapitalMm / 3;
    }
}
