using System.Collections.Immutable;

namespace Linewright.Solids.Outlines;

/// <summary>A drawn view: lines, and where it is a section the areas that were cut.</summary>
/// <param name="Lines">Visible lines first, each body's in turn.</param>
/// <param name="Cuts">The cut areas by body; empty where nothing was cut.</param>
public sealed record OutlineView(ImmutableArray<OutlineLine> Lines, ImmutableArray<CutArea> Cuts);
