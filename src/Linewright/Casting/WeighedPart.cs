using Linewright.Parts;

namespace Linewright.Casting;

/// <summary>What one part of a piece holds of metal in both states.</summary>
/// <param name="Part">The part.</param>
/// <param name="FinishedMm3">Volume of one as set and polished.</param>
/// <param name="CastMm3">Volume of one as it leaves the casting, shrunk to size; 0 for drawn wire.</param>
public sealed record WeighedPart(Part Part, double FinishedMm3, double CastMm3);
