using Linewright.Brief;
using Linewright.Making;

namespace Linewright.Cli;

/// <summary>The workbench of this program: the one place where the verbs meet the layout, the parts and the writers.</summary>
internal sealed class Workbench : IWorkbench
{
    /// <inheritdoc/>
    public Report Plan(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => throw new NotSupportedException("Plan waits for the layout.");

    /// <inheritdoc/>
    public Report Check(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => throw new NotSupportedException("Check waits for the parts.");

    /// <inheritdoc/>
    public Report Weigh(ResolvedBrief brief, IProgress<string> stage, CancellationToken stop) => throw new NotSupportedException("Weigh waits for the parts.");

    /// <inheritdoc/>
    public Report Make(ResolvedBrief brief, OutputFolder folder, IProgress<string> stage, CancellationToken stop) => throw new NotSupportedException("Make waits for the parts.");
}
