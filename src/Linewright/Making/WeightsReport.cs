namespace Linewright.Making;

/// <summary>The metal of the piece.</summary>
/// <param name="MetalFinishedG">As set and polished.</param>
/// <param name="MetalCastG">As cast, without sprues.</param>
/// <param name="MetalToMeltG">To be melted, with sprues and button.</param>
public sealed record WeightsReport(double MetalFinishedG, double MetalCastG, double MetalToMeltG);
