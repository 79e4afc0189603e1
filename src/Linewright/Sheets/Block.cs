using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>Marks that belong together, about an origin of their own, ready to be put on a page.</summary>
/// <param name="Marks">About the origin.</param>
/// <param name="Box">All that they need, lettering included.</param>
internal sealed record Block(ImmutableArray<Mark> Marks, PaperBox Box)
{
    /// <summary>A block of marks, as large as they are.</summary>
    public static Block Of(IEnumerable<Mark> marks)
    {
        ImmutableArray<Mark> all = [.. marks];
        return new Block(all, all.Aggregate(PaperBox.Empty, (box, mark) => box.Join(mark.Box)));
    }

    /// <summary>The marks with the origin at a place.</summary>
    public IEnumerable<Mark> At(PaperPoint origin) => Marks.Select(mark => mark.Moved(origin));

    /// <summary>True where nothing has to stand in line with it: a grid puts it in the middle of its cell.</summary>
    public bool IsFree { get; init; }

    /// <summary>The marks with the middle of the box at a place.</summary>
    public IEnumerable<Mark> CentredAt(PaperPoint middle) => At(middle - Box.Centre);
}
