namespace Linewright.Tolerance;

/// <summary>The gaps that let a tongue in and out, and the overlap that keeps it. mm, at rest and at their nominal.</summary>
/// <param name="SideMm">Box less strip across, both sides together.</param>
/// <param name="FoldMm">Under the lip less the folded strip, floor and lip together.</param>
/// <param name="ReleaseMm">How much further the push goes than the catch needs.</param>
/// <param name="OverlapMm">Catch behind the lip.</param>
/// <param name="LeastGapMm">A gap below this binds.</param>
/// <param name="LeastOverlapMm">An overlap below this slips.</param>
/// <param name="FiledShare">How much of the casting's scatter filing leaves in the box.</param>
/// <param name="StripSpreadMm">Spread of the strip's thickness and width.</param>
/// <param name="BendSpreadMm">Spread of the fold and of the set of the upper leaf.</param>
public sealed record ClaspVariation(
    double SideMm,
    double FoldMm,
    double ReleaseMm,
    double OverlapMm,
    double LeastGapMm,
    double LeastOverlapMm,
    double FiledShare,
    double StripSpreadMm,
    double BendSpreadMm);
