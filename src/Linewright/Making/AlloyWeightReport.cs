namespace Linewright.Making;

/// <summary>What the piece weighs in one alloy.</summary>
/// <param name="Metal">Key of the alloy.</param>
/// <param name="FinishedG">As set and polished.</param>
/// <param name="CastG">As cast, without sprues.</param>
/// <param name="ToMeltG">To be melted, with sprues, stems and buttons of the same trees.</param>
public sealed record AlloyWeightReport(string Metal, double FinishedG, double CastG, double ToMeltG);
