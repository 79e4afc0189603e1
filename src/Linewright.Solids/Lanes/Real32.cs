using System.Runtime.CompilerServices;

namespace Linewright.Solids.Lanes;

/// <summary>One float: what a single lane computes, bit for bit.</summary>
public readonly struct Real32 : IReal<Real32>
{
    /// <summary>The number.</summary>
    public readonly float Value;

    /// <summary>Wraps a number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Real32(float value) => Value = value;

    public static int Width => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 C(double value) => new((float)value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 Load(ref readonly float source) => new(source);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Real32 value, ref float target) => target = (float)value.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 operator +(Real32 a, Real32 b) => new(a.Value + b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 operator -(Real32 a, Real32 b) => new(a.Value - b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 operator *(Real32 a, Real32 b) => new(a.Value * b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 operator -(Real32 a) => new(-a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 Min(Real32 a, Real32 b) => b.Value < a.Value ? b : a;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 Max(Real32 a, Real32 b) => a.Value < b.Value ? b : a;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 Abs(Real32 a) => new(MathF.Abs(a.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 Sqrt(Real32 a) => new(MathF.Sqrt(a.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 Reciprocal(Real32 a) => new(1 / a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real32 IfLess(Real32 a, Real32 b, Real32 then, Real32 otherwise) => a.Value < b.Value ? then : otherwise;
}
