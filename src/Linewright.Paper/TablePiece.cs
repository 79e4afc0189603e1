using System.Collections.Immutable;

namespace Linewright.Paper;

/// <summary>The part of a table that stands on one page.</summary>
/// <param name="Marks">What is drawn.</param>
/// <param name="BottomMm">Its lower edge.</param>
/// <param name="Rest">The same table with the rows that are left for the next page; none where all are set.</param>
public sealed record TablePiece(ImmutableArray<Mark> Marks, double BottomMm, Table Rest);
