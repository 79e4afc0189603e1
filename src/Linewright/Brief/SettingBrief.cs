namespace Linewright.Brief;

/// <summary>How the stone is held.</summary>
/// <param name="ClawMm">Diameter of a claw, finished.</param>
/// <param name="SeatFraction">Depth of the bearing over the claw's diameter.</param>
/// <param name="CoverMm">Radial reach of a claw's tip over the crown, as set.</param>
/// <param name="TipRiseMm">Height of a claw over the table, as cast.</param>
/// <param name="CuletClearanceMm">From the culet to the skin.</param>
public sealed record SettingBrief(double ClawMm, double SeatFraction, double CoverMm, double TipRiseMm, double CuletClearanceMm);
