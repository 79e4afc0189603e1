using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Solids.Lanes;

/// <summary>8 floats at once, in the portable vector type of that width.</summary>
public readonly struct Lanes8 : IReal<Lanes8>
{
    private readonly Vector256<float> value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Lanes8(Vector256<float> value) => this.value = value;

    internal Vector256<float> Vector
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => value;
    }

    public static int Width => 8;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 C(double value) => new(Vector256.Create((float)value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Load(ref readonly float source) => new(Vector256.LoadUnsafe(in source));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes8 value, ref float target) => value.value.StoreUnsafe(ref target);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator +(Lanes8 a, Lanes8 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator -(Lanes8 a, Lanes8 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator *(Lanes8 a, Lanes8 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator -(Lanes8 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Min(Lanes8 a, Lanes8 b) => IfLess(b, a, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Max(Lanes8 a, Lanes8 b) => IfLess(a, b, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Abs(Lanes8 a) => new(Vector256.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Sqrt(Lanes8 a) => new(Vector256.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Reciprocal(Lanes8 a) => new(Vector256<float>.One / a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 IfLess(Lanes8 a, Lanes8 b, Lanes8 then, Lanes8 otherwise)
        => new(Vector256.ConditionalSelect(Vector256.LessThan(a.value, b.value), then.value, otherwise.value));
}
