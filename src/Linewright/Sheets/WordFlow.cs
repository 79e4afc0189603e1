using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>Headed tables set one after the other in columns, and on further pages where one is full.</summary>
internal static class WordFlow
{
    private const double GutterMm = 6, HeadingMm = 2.4, BetweenMm = 4.5;

    /// <summary>How many columns a page has.</summary>
    public const int Columns = 3;

    /// <summary>Width of a column in a field, mm.</summary>
    public static double ColumnMm(PaperBox field) => (field.Width - (Columns - 1) * GutterMm) / Columns;

    /// <summary>Sets the sections; each answer is what stands on one page.</summary>
    /// <param name="sections">Heading and table of each.</param>
    /// <param name="field">The room on every page.</param>
    /// <param name="corner">Where the first column may go on below the field; empty where it may not.</param>
    public static ImmutableArray<ImmutableArray<Mark>> Set(IEnumerable<(string Heading, Table Table)> sections, PaperBox field, PaperBox corner)
    {
        // Tables stay whole, unless that costs a sheet.
        ImmutableArray<(string, Table)> all = [.. sections];
        var whole = Set(all, field, corner, keepsWhole: true);
        var parted = whole.Length == 1 ? whole : Set(all, field, corner, keepsWhole: false);
        return parted.Length < whole.Length ? parted : whole;
    }

    private static ImmutableArray<ImmutableArray<Mark>> Set(IEnumerable<(string Heading, Table Table)> sections, PaperBox field, PaperBox corner, bool keepsWhole)
    {
        var pages = new List<List<Mark>> { new() };
        int column = 0;
        double y = field.Top, width = ColumnMm(field);

        // Left of the title block there is more room than beside it.
        double Bottom() => column == 0 && corner.Right >= field.Left + width ? corner.Bottom : field.Bottom;
        double Left() => field.Left + column * (width + GutterMm);
        void NextColumn()
        {
            column++;
            y = field.Top;
            if (column == Columns)
            {
                column = 0;
                pages.Add([]);
            }
        }

        foreach (var (heading, whole) in sections)
        {
            var title = heading;
            var table = whole;
            while (true)
            {
                // A heading stays with its table's first row; where the rest of the column is short a table that fits the next one moves there whole.
                var head = SheetPens.Heading.CapitalMm + HeadingMm;
                var room = Bottom() - y - head;
                var least = keepsWhole ? 18 : (table with { Rows = [table.Rows[0]] }).HeightMm;
                if (y > field.Top && (room < Math.Min(table.HeightMm, least) || (keepsWhole && table.HeightMm > room && table.HeightMm <= field.Height - head && room < 0.15 * field.Height)))
                {
                    NextColumn();
                }

                pages[^1].Add(new Label(new PaperPoint(Left(), y + SheetPens.Heading.CapitalMm), title, SheetPens.Heading));
                var piece = table.Set(Left(), y + head, Bottom());
                pages[^1].AddRange(piece.Marks);
                y = piece.BottomMm + BetweenMm;
                if (piece.Rest.Rows.IsEmpty)
                {
                    break;
                }

                (table, title) = (piece.Rest, heading + ", continued");
                NextColumn();
            }
        }

        return [.. pages.Select(page => page.ToImmutableArray())];
    }
}
