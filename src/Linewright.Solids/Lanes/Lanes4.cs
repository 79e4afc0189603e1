using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Solids.Lanes;

/// <summary>4 floats at once, in the portable vector type of that width.</summary>
public readonly struct Lanes4 : IReal<Lanes4>
{
    private readonly Vector128<float> value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Lanes4(Vector128<float> value) => this.value = value;

    internal Vector128<float> Vector
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => value;
    }

    public static int Width => 4;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 C(double value) => new(Vector128.Create((float)value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Load(ref readonly float source) => new(Vector128.LoadUnsafe(in source));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes4 value, ref float target) => value.value.StoreUnsafe(ref target);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator +(Lanes4 a, Lanes4 b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator -(Lanes4 a, Lanes4 b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator *(Lanes4 a, Lanes4 b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator -(Lanes4 a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Min(Lanes4 a, Lanes4 b) => IfLess(b, a, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Max(Lanes4 a, Lanes4 b) => IfLess(a, b, b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Abs(Lanes4 a) => new(Vector128.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Sqrt(Lanes4 a) => new(Vector128.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Reciprocal(Lanes4 a) => new(Vector128<float>.One / a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 IfLess(Lanes4 a, Lanes4 b, Lanes4 then, Lanes4 otherwise)
        => new(Vector128.ConditionalSelect(Vector128.LessThan(a.value, b.value), then.value, otherwise.value));
}
