using System.Runtime.CompilerServices;

namespace Linewright.Solids.Space;

/// <summary>Refuses a programmer's slip at the door, with the value and the range that would do.</summary>
public static class Guard
{
    /// <summary>Returns the value where it is a number within the closed range, throws otherwise.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside the range.</exception>
    public static double InRange(double value, double low, double high, [CallerArgumentExpression(nameof(value))] string? name = null)
        => value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{name} must lie between {low} and {high}"));

    /// <summary>Returns the value where it is a finite number above zero, throws otherwise.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite, zero or negative.</exception>
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
        => value > 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{name} must be a finite number above 0"));

    /// <summary>Returns the value where it is a finite number, throws otherwise.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null)
        => double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"{name} must be a finite number"));
}
