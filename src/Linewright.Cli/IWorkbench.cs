using Linewright.Brief;
using Linewright.Making;

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
    Report Make(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop);
}
