using System.Runtime.CompilerServices;

namespace Linewright.Solids.Lanes;

/// <summary>A number with its derivatives along x, y and z: a formula evaluated in it returns its exact gradient.</summary>
/// <remarks>
/// Source: forward-mode differentiation, Wengert (1964), A simple automatic derivative evaluation program.
/// Choices (minimum, magnitude, ...) take the derivatives of the branch they choose.
/// </remarks>
public readonly struct Dual<T> : IDual<Dual<T>, T>
    where T : struct, IReal<T>
{
    /// <summary>The number.</summary>
    public readonly T Value;

    /// <summary>Derivative along x.</summary>
    public readonly T X;

    /// <summary>Derivative along y.</summary>
    public readonly T Y;

    /// <summary>Derivative along z.</summary>
    public readonly T Z;

    /// <summary>A number and its derivatives.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Dual(T value, T x, T y, T z)
    {
        Value = value;
        X = x;
        Y = y;
        Z = z;
    }

    public static int Width => T.Width;

    T IDual<Dual<T>, T>.Number => Value;

    T IDual<Dual<T>, T>.AlongX => X;

    T IDual<Dual<T>, T>.AlongY => Y;

    T IDual<Dual<T>, T>.AlongZ => Z;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> Of(T value, T x, T y, T z) => new(value, x, y, z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> C(double value) => new(T.C(value), T.C(0), T.C(0), T.C(0));

    public static Dual<T> Load(ref readonly float source) => throw new NotSupportedException("a dual number has four parts");

    public static void Store(Dual<T> value, ref float target) => throw new NotSupportedException("a dual number has four parts");

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> operator +(Dual<T> a, Dual<T> b) => new(a.Value + b.Value, a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> operator -(Dual<T> a, Dual<T> b) => new(a.Value - b.Value, a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> operator *(Dual<T> a, Dual<T> b) => new(
        a.Value * b.Value,
        a.X * b.Value + b.X * a.Value,
        a.Y * b.Value + b.Y * a.Value,
        a.Z * b.Value + b.Z * a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> operator -(Dual<T> a) => new(-a.Value, -a.X, -a.Y, -a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> Min(Dual<T> a, Dual<T> b) => IfLess(b, a, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> Max(Dual<T> a, Dual<T> b) => IfLess(a, b, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> Abs(Dual<T> a) => IfLess(a, C(0), -a, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> Sqrt(Dual<T> a)
    {
        // The floor keeps the derivative finite where the root is zero: there it is a corner and has none.
        var root = T.Sqrt(a.Value);
        var half = T.Reciprocal(T.Max(root + root, T.C(1e-12)));
        return new Dual<T>(root, a.X * half, a.Y * half, a.Z * half);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> Reciprocal(Dual<T> a)
    {
        var inverse = T.Reciprocal(a.Value);
        var slope = -(inverse * inverse);
        return new Dual<T>(inverse, a.X * slope, a.Y * slope, a.Z * slope);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual<T> IfLess(Dual<T> a, Dual<T> b, Dual<T> then, Dual<T> otherwise) => new(
        T.IfLess(a.Value, b.Value, then.Value, otherwise.Value),
        T.IfLess(a.Value, b.Value, then.X, otherwise.X),
        T.IfLess(a.Value, b.Value, then.Y, otherwise.Y),
        T.IfLess(a.Value, b.Value, then.Z, otherwise.Z));
}
