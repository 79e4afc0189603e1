using Linewright.Brief;
using Linewright.Making;
using Linewright.Paper;
using Linewright.Quote;

namespace Linewright.Cli;

/// <summary>The chain behind the verbs: each takes a resolved brief and returns the report, as far as the verb goes.</summary>
/// <remarks>
/// Calls may take seconds; they name their stages as they go and stop soon after they are asked to, by
/// <see cref="OperationCanceledException"/>. A brief for which no line closes has no report: it ends in a
/// <see cref="RefusalException"/> that says why and what would work. What can be built but should not is a failing finding.
/// </remarks>
internal interface IWorkbench
{
    /// <summary>Lays the line out: no parts, no weights.</summary>
    Report Plan(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds the parts and runs every check on them.</summary>
    Report Check(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds the parts and weighs them.</summary>
    Report Weigh(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop);

    /// <summary>Prices the piece: the report as far as the layout, and the quote.</summary>
    (Report Report, PieceQuote Quote) Quote(ResolvedBrief brief, PriceList list, string? grade, IProgress<string> stage, CancellationToken stop);

    /// <summary>Prices every combination of some values; a cell for which no line closes says why.</summary>
    QuoteGrid Grid(IReadOnlyList<GridAxis> axes, IReadOnlyList<ResolvedBrief> briefs, PriceList list, string? grade, bool isChecked, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds the parts, measures their walls and draws a lot of such pieces.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="pieces">How many to draw.</param>
    /// <param name="seed">Which lot.</param>
    /// <param name="stage">Told what is being done.</param>
    /// <param name="stop">Asks to stop.</param>
    Report Tolerance(ResolvedBrief brief, int pieces, long seed, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds the parts, sprues and nests them, and writes the plates and the table of the trees.</summary>
    Report Plate(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds, checks and writes every file but report.json, which the verb writes from the answer.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="paper">The paper that the sheet is drawn for.</param>
    /// <param name="date">For its title block; null leaves it empty.</param>
    /// <param name="priced">Told what a quote needs to know, from the plan that the files follow and before the long work; null where no price is asked.</param>
    /// <param name="folder">Where to write.</param>
    /// <param name="stage">Told what is being done.</param>
    /// <param name="stop">Asks to stop.</param>
    Report Make(ResolvedBrief brief, PaperSize paper, DateOnly? date, Action<QuoteBasis>? priced, OutputFolder folder, IProgress<string> stage, CancellationToken stop);

    /// <summary>Builds, checks and draws the technical sheet; writes its files but not report.json.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="paper">The paper that it is drawn for.</param>
    /// <param name="date">For the title block; null leaves it empty.</param>
    /// <param name="folder">Where to write.</param>
    /// <param name="stage">Told what is being done.</param>
    /// <param name="stop">Asks to stop.</param>
    Report Sheet(ResolvedBrief brief, PaperSize paper, DateOnly? date, OutputFolder folder, IProgress<string> stage, CancellationToken stop);

    /// <summary>Begins to take pictures of a piece; it is built with the first.</summary>
    IPhotoSession Photograph(ResolvedBrief brief);
}
