using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>One side of a sheet with what is on it.</summary>
/// <param name="Size">The trimmed sheet.</param>
/// <param name="Marks">From the lowest to the uppermost.</param>
public sealed record Page(PaperSize Size, ImmutableArray<Mark> Marks);
