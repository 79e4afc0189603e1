using System.Diagnostics.CodeAnalysis;

namespace Linewright.Layout;

/// <summary>A line around a wrist, or why it does not close.</summary>
/// <param name="Status">Fits, or what stands in the way.</param>
/// <param name="Fit">Null unless it fits.</param>
/// <param name="Reason">One sentence with the numbers; empty where it fits.</param>
public sealed record WristFitResult(FitStatus Status, WristFit? Fit, string Reason)
{
    /// <summary>True where the line fits.</summary>
    [MemberNotNullWhen(true, nameof(Fit))]
    public bool Fits => Status == FitStatus.Fits && Fit is not null;
}
