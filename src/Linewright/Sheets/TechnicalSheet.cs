using System.Collections.Immutable;
using Linewright.Paper;

namespace Linewright.Sheets;

/// <summary>The finished sheet: pages for print, and the link's outlines for whoever draws on.</summary>
/// <param name="Document">All pages.</param>
/// <param name="Outlines">The link's three views and its sections at true scale, mm, laid out as on the pages.</param>
/// <param name="ProjectionName">How the views are laid out, in words: first angle, third angle.</param>
public sealed record TechnicalSheet(PaperDocument Document, ImmutableArray<OutlinePlan> Outlines, string ProjectionName);
