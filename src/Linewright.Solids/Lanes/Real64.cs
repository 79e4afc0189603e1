using System.Runtime.CompilerServices;

namespace Linewright.Solids.Lanes;

/// <summary>One double: the reference that all checks are measured with.</summary>
public readonly struct Real64 : IReal<Real64>
{
    /// <summary>The number.</summary>
    public readonly double Value;

    /// <summary>Wraps a number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Real64(double value) => Value = value;

    public static int Width => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 C(double value) => new((double)value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 Load(ref readonly float source) => new(source);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Real64 value, ref float target) => target = (float)value.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 operator +(Real64 a, Real64 b) => new(a.Value + b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 operator -(Real64 a, Real64 b) => new(a.Value - b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 operator *(Real64 a, Real64 b) => new(a.Value * b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 operator -(Real64 a) => new(-a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 Min(Real64 a, Real64 b) => b.Value < a.Value ? b : a;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 Max(Real64 a, Real64 b) => a.Value < b.Value ? b : a;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 Abs(Real64 a) => new(Math.Abs(a.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 Sqrt(Real64 a) => new(Math.Sqrt(a.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 Reciprocal(Real64 a) => new(1 / a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real64 IfLess(Real64 a, Real64 b, Real64 then, Real64 otherwise) => a.Value < b.Value ? then : otherwise;
}
