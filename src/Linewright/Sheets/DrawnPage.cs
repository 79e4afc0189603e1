using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>What is drawn on one page, before it has its frame.</summary>
/// <param name="Title">What it shows, for the title block.</param>
/// <param name="Scale">Its scale as text.</param>
/// <param name="Marks">All marks where they stand.</param>
internal sealed record DrawnPage(string Title, string Scale, ImmutableArray<Mark> Marks)
{
    /// <summary>Views on one page; on two where one page shows them smaller than wanted and two show them larger.</summary>
    /// <param name="whole">All views.</param>
    /// <param name="first">Those of the first page, where two are needed.</param>
    /// <param name="second">The others.</param>
    /// <param name="field">The room on a page.</param>
    /// <param name="wanted">The scale at which the views can be worked from.</param>
    public static ImmutableArray<DrawnPage> Lay(DrawnCells whole, DrawnCells first, DrawnCells second, PaperBox field, SheetScale wanted)
    {
        var (one, scale) = Of(whole, field);
        if (scale >= wanted.Factor)
        {
            return [one];
        }

        var (front, frontScale) = Of(first, field);
        var (back, backScale) = Of(second, field);
        return Math.Max(frontScale, backScale) > scale ? [front, back] : [one];
    }

    private static (DrawnPage Page, double Scale) Of(DrawnCells cells, PaperBox field)
    {
        var (scale, marks) = Grid.Largest(cells.At, field);
        return (new DrawnPage(cells.Title, scale.Text, marks), scale.Factor);
    }
}
