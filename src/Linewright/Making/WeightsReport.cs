namespace Linewright.Making;

/// <summary>The metal of the piece, and the same piece in every other alloy of the table.</summary>
/// <param name="MetalFinishedG">As set and polished, drawn pins included.</param>
/// <param name="MetalCastG">As cast, without sprues; drawn pins are not cast.</param>
/// <param name="MetalToMeltG">To be melted: parts, sprues, stems and buttons of the planned trees; the same figure as casting.metal_to_weigh_out_g.</param>
/// <param name="Alloys">The same solids in each alloy, by rising weight; an alloy with other least walls or another shrinkage would change them a little.</param>
public sealed record WeightsReport(
    double MetalFinishedG, double MetalCastG, double MetalToMeltG, IReadOnlyList<AlloyWeightReport> Alloys);
