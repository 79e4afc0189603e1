using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Solids.Lanes;

/// <summary>8 floats at once with their derivatives: the same bits as <see cref="Dual{T}"/> of <see cref="Lanes8"/>.</summary>
/// <remarks>Written out for the reason given at <see cref="Dual16"/>.</remarks>
public readonly struct Dual8 : IDual<Dual8, Lanes8>
{
    private readonly Vector256<float> value, x, y, z;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Dual8(Vector256<float> value, Vector256<float> x, Vector256<float> y, Vector256<float> z)
    {
        this.value = value;
        this.x = x;
        this.y = y;
        this.z = z;
    }

    public static int Width => 8;

    public Lanes8 Number
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(value);
    }

    public Lanes8 AlongX
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(x);
    }

    public Lanes8 AlongY
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(y);
    }

    public Lanes8 AlongZ
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 Of(Lanes8 value, Lanes8 x, Lanes8 y, Lanes8 z) => new(value.Vector, x.Vector, y.Vector, z.Vector);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 C(double value)
        => new(Vector256.Create((float)value), Vector256<float>.Zero, Vector256<float>.Zero, Vector256<float>.Zero);

    public static Dual8 Load(ref readonly float source) => throw new NotSupportedException("a dual number has four parts");

    public static void Store(Dual8 value, ref float target) => throw new NotSupportedException("a dual number has four parts");

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 operator +(Dual8 a, Dual8 b) => new(a.value + b.value, a.x + b.x, a.y + b.y, a.z + b.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 operator -(Dual8 a, Dual8 b) => new(a.value - b.value, a.x - b.x, a.y - b.y, a.z - b.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 operator *(Dual8 a, Dual8 b) => new(
        a.value * b.value,
        a.x * b.value + b.x * a.value,
        a.y * b.value + b.y * a.value,
        a.z * b.value + b.z * a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 operator -(Dual8 a) => new(-a.value, -a.x, -a.y, -a.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 Min(Dual8 a, Dual8 b) => Choose(Vector256.LessThan(b.value, a.value), b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 Max(Dual8 a, Dual8 b) => Choose(Vector256.LessThan(a.value, b.value), b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 Abs(Dual8 a) => Choose(Vector256.LessThan(a.value, Vector256<float>.Zero), -a, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 Sqrt(Dual8 a)
    {
        // The floor keeps the derivative finite where the root is zero: there it is a corner and has none.
        var root = Vector256.Sqrt(a.value);
        Vector256<float> twice = root + root, least = Vector256.Create(1e-12f);
        var half = Vector256<float>.One / Vector256.ConditionalSelect(Vector256.LessThan(twice, least), least, twice);
        return new Dual8(root, a.x * half, a.y * half, a.z * half);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 Reciprocal(Dual8 a)
    {
        var inverse = Vector256<float>.One / a.value;
        var slope = -(inverse * inverse);
        return new Dual8(inverse, a.x * slope, a.y * slope, a.z * slope);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual8 IfLess(Dual8 a, Dual8 b, Dual8 then, Dual8 otherwise)
        => Choose(Vector256.LessThan(a.value, b.value), then, otherwise);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Dual8 Choose(Vector256<float> where, Dual8 then, Dual8 otherwise) => new(
        Vector256.ConditionalSelect(where, then.value, otherwise.value),
        Vector256.ConditionalSelect(where, then.x, otherwise.x),
        Vector256.ConditionalSelect(where, then.y, otherwise.y),
        Vector256.ConditionalSelect(where, then.z, otherwise.z));
}
