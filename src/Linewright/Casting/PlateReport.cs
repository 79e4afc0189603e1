namespace Linewright.Casting;

/// <summary>One plate of patterns, mm.</summary>
/// <param name="File">Path of its file in the folder.</param>
/// <param name="Patterns">How many stand on it.</param>
/// <param name="UsedXMm">Width that they take.</param>
/// <param name="UsedYMm">Depth that they take.</param>
/// <param name="HeightMm">Of the highest.</param>
public sealed record PlateReport(string File, int Patterns, double UsedXMm, double UsedYMm, double HeightMm);
