using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>Pages under one title, ready for whichever format: nothing in it depends on one.</summary>
/// <param name="Title">What it is, for a reader's window and for search.</param>
/// <param name="Pages">One at least.</param>
public sealed record PaperDocument(string Title, ImmutableArray<Page> Pages)
{
    /// <summary>Every character that is set in a weight, in rising order: what the type in a file must hold.</summary>
    public ImmutableSortedSet<int> CharactersIn(TextWeight weight) =>
    [
        .. Pages.SelectMany(page => page.Marks).OfType<Label>().Where(label => label.Style.Weight == weight)
            .SelectMany(label => label.Text.EnumerateRunes()).Select(rune => rune.Value),
    ];
}
