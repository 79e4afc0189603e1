namespace Linewright.Making;

/// <summary>The metal of the piece, and the same piece in every other alloy of the table.</summary>
/// <param name="MetalFinishedG">As set and polished, drawn pins included.</param>
/// <param name="MetalCastG">As cast, without sprues; drawn pins are not cast.</param>
/// <param name="MetalToMeltG">To be melted, with sprues and button.</param>
/// <param name="Alloys">The same solids in each alloy, by rising weight; an alloy with other least walls would change them a little.</param>
public sealed record WeightsReport(
    double MetalFinishedG, double MetalCastG, double MetalToMeltG, IReadOnlyList<AlloyWeightReport> Alloys);
