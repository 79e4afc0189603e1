namespace Linewright.Tolerance;

/// <summary>What one tolerance does to the lot.</summary>
/// <param name="Tolerance">Which.</param>
/// <param name="Field">The field of the brief that changes it.</param>
/// <param name="Spread">One standard deviation, in <paramref name="Unit"/>.</param>
/// <param name="Unit">%, um or mm.</param>
/// <param name="LengthSharePercent">Its share of the variance of the length.</param>
/// <param name="WallSharePercent">Its share of the variance of the wall that is most often under its limit; null where no wall is in danger.</param>
/// <param name="YieldWithoutPercent">Pieces that would run free, close and hold, were it exact.</param>
/// <param name="YieldGainPercent">The same less what the lot has: what it costs.</param>
public sealed record Sensitivity(
    ToleranceSource Tolerance,
    string Field,
    double Spread,
    string Unit,
    double LengthSharePercent,
    double? WallSharePercent,
    double YieldWithoutPercent,
    double YieldGainPercent);
