using Linewright.Brief;
using Linewright.Casting;
using Linewright.Checks;
using Linewright.Tolerance;

namespace Linewright.Making;

/// <summary>Everything that is known about a piece, as report.json holds it: the one answer of every verb and every door.</summary>
/// <remarks>Lengths in mm, masses in g, stones in ct, angles in degrees. Same brief, same report.</remarks>
/// <param name="Brief">The brief with all defaults filled.</param>
/// <param name="Layout">The chosen layout, and the others that close.</param>
/// <param name="Parts">Unique parts as cast; empty where only the layout was asked for.</param>
/// <param name="Stones">The stones of the piece.</param>
/// <param name="Weights">Metal; null where only the layout was asked for.</param>
/// <param name="Findings">What the checks measured.</param>
/// <param name="Cautions">What a person must know beside the findings, in sentences.</param>
public sealed record Report(
    ResolvedBrief Brief,
    LayoutReport Layout,
    IReadOnlyList<PartReport> Parts,
    StonesReport Stones,
    WeightsReport? Weights,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<string> Cautions)
{
    /// <summary>What to ask the stone dealer for; null in a report that was made up without a design.</summary>
    public StoneOrder? StoneOrder { get; init; }

    /// <summary>How a lot of such pieces would come out; null where it was not asked for.</summary>
    public ToleranceReport? Tolerance { get; init; }

    /// <summary>Sprues, plates and trees; null where they were not asked for.</summary>
    public CastingReport? Casting { get; init; }

    /// <summary>True where a check says that the piece must not be made like this.</summary>
    public bool Fails() => Findings.Any(finding => finding.Verdict == Verdict.Fail);
}
