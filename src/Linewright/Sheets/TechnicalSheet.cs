using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>The finished sheet: pages for print, and the link's outlines for whoever draws on.</summary>
/// <param name="Document">All pages.</param>
/// <param name="Outlines">The link's three views and its sections at true scale, mm.</param>
public sealed record TechnicalSheet(PaperDocument Document, ImmutableArray<OutlinePlan> Outlines);
