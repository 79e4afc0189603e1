namespace Linewright.Tolerance;

/// <summary>How much thicker than their least walls are drawn so that enough pieces keep them all.</summary>
/// <param name="WantedPercent">Pieces that should have no wall too thin.</param>
/// <param name="ShortfallMm">How far under its limit a wall may come out; 0 where it may not.</param>
/// <param name="ReserveMm">For process.wall_reserve_mm; null where no reserve that a brief may name would do.</param>
/// <param name="ReckonedPercent">Pieces that keep their walls with it, were each wall thicker by just what is added.</param>
/// <param name="TriedPercent">The same of the piece solved anew with it and measured; null where that was not tried, or no line closes.</param>
/// <param name="Note">What stands in the way; empty where nothing does.</param>
public sealed record WallReserve(
    double WantedPercent, double ShortfallMm, double? ReserveMm, double? ReckonedPercent, double? TriedPercent = null, string Note = "");
