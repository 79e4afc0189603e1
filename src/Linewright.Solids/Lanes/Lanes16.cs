using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Solids.Lanes;

/// <summary>16 floats at once, in the portable vector type of that width.</summary>
public readonly struct Lanes16 : IReal<Lanes16>
{
    private readonly Vector512<float> value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Lanes16(Vector512<float> value) => this.value = value;

    internal Vector512<float> Vector
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => value;
    }

    public static int Width => 16;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 C(double value) => new(Vector512.Create((float)value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 Load(ref readonly float source) => new(Vector512.LoadUnsafe(in source));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes16 value, ref float target) => value.value.StoreUnsafe(ref target);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 operator +(Lanes16 a, Lanes16 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 operator -(Lanes16 a, Lanes16 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 operator *(Lanes16 a, Lanes16 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 operator -(Lanes16 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 Min(Lanes16 a, Lanes16 b) => IfLess(b, a, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 Max(Lanes16 a, Lanes16 b) => IfLess(a, b, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 Abs(Lanes16 a) => new(Vector512.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 Sqrt(Lanes16 a) => new(Vector512.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 Reciprocal(Lanes16 a) => new(Vector512<float>.One / a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes16 IfLess(Lanes16 a, Lanes16 b, Lanes16 then, Lanes16 otherwise)
        => new(Vector512.ConditionalSelect(Vector512.LessThan(a.value, b.value), then.value, otherwise.value));
}
