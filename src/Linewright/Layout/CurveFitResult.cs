using System.Diagnostics.CodeAnalysis;

namespace Linewright.Layout;

/// <summary>A line along a curve, or why it cannot lie there.</summary>
/// <param name="Status">Fits, or what stands in the way.</param>
/// <param name="Fit">Null unless it fits.</param>
/// <param name="SmallestRadiusMm">The tightest bend, measured through the hinge axes, that this line can follow.</param>
/// <param name="Reason">One sentence with the numbers; empty where it fits.</param>
public sealed record CurveFitResult(FitStatus Status, CurveFit? Fit, double SmallestRadiusMm, string Reason)
{
    /// <summary>True where the line fits.</summary>
    [MemberNotNullWhen(true, nameof(Fit))]
    public bool Fits => Status == FitStatus.Fits && Fit is not null;
}
