namespace Linewright.Layout;

/// <summary>A count of links that does not do, and why.</summary>
/// <param name="Count">Stone-set links.</param>
/// <param name="ClaspMm">What they leave for the clasp at the preferred gap; may be below 0, or infinite where a ring of so few links cannot close.</param>
/// <param name="GapNeededMm">The gap that the nearest clasp limit would ask for; may be below 0.</param>
/// <param name="Reason">One sentence for a designer.</param>
public sealed record LineMiss(int Count, double ClaspMm, double GapNeededMm, string Reason);
