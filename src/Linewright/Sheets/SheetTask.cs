using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Solids.Outlines;

namespace Linewright.Sheets;

/// <summary>What a technical sheet is drawn from.</summary>
/// <param name="Model">The piece as worn, meshed and assembled.</param>
/// <param name="Report">Its report: counts, weights, findings, cautions.</param>
/// <param name="Bodies">The surface of each part as set, ready to draw, in the order of the piece's parts.</param>
/// <param name="Paper">The sheet's size; letter is drawn in third angle, all others in first.</param>
/// <param name="Date">The date for the title block; null leaves it empty, for nothing here knows what day it is.</param>
public sealed record SheetTask(PieceModel Model, Report Report, ImmutableArray<OutlineBody> Bodies, PaperSize Paper, DateOnly? Date = null);
