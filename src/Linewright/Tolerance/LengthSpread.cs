namespace Linewright.Tolerance;

/// <summary>How long the pieces of a lot come out, closed, taut and laid flat, mm. Errors hold 19 times in 20.</summary>
/// <param name="NominalMm">As designed.</param>
/// <param name="MeanMm">Of the lot.</param>
/// <param name="MeanErrorMm">Half the interval of the mean.</param>
/// <param name="DeviationMm">Standard deviation of the lot.</param>
/// <param name="ClosedFormDeviationMm">The same as the root of the sum of squares.</param>
/// <param name="LowMm">5 % of the pieces are shorter.</param>
/// <param name="HighMm">5 % of the pieces are longer.</param>
public sealed record LengthSpread(
    double NominalMm, double MeanMm, double MeanErrorMm, double DeviationMm, double ClosedFormDeviationMm, Quantile LowMm, Quantile HighMm);
