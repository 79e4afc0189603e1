using System.Collections.Immutable;
using Linewright.Solids.Outlines;

namespace Linewright.Sheets;

/// <summary>One view at true scale, put beside the others.</summary>
/// <param name="Name">Upper case, fit for a layer: FRONT, TOP, SIDE, SECTION_A.</param>
/// <param name="Title">As the sheet calls the view: SECTION A-A.</param>
/// <param name="Lines">All lines, moved to their place, mm.</param>
/// <param name="StoneTag">The tag of the stone's lines; all others are metal.</param>
public sealed record OutlinePlan(string Name, string Title, ImmutableArray<OutlineLine> Lines, int StoneTag);
