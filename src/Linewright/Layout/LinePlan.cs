using System.Collections.Immutable;

namespace Linewright.Layout;

/// <summary>Every way to lay the line out, best first, or the reason why there is none.</summary>
/// <param name="Task">What was asked.</param>
/// <param name="Candidates">The best, at most <see cref="LinePlanner.MostCandidates"/>.</param>
/// <param name="CandidateCount">How many there are in all.</param>
/// <param name="Misses">The counts just outside, and why they do not do; fewest links first.</param>
/// <param name="Refusal">Null where there is a candidate.</param>
public sealed record LinePlan(
    LineTask Task,
    ImmutableArray<LineCandidate> Candidates,
    int CandidateCount,
    ImmutableArray<LineMiss> Misses,
    LineRefusal? Refusal)
{
    /// <summary>The candidate to take unless the designer says otherwise; null where the line is refused.</summary>
    public LineCandidate? Best => Candidates.IsEmpty ? null : Candidates[0];
}
