using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Solids.Lanes;

/// <summary>4 floats at once with their derivatives: the same bits as <see cref="Dual{T}"/> of <see cref="Lanes4"/>.</summary>
/// <remarks>Written out for the reason given at <see cref="Dual16"/>.</remarks>
public readonly struct Dual4 : IDual<Dual4, Lanes4>
{
    private readonly Vector128<float> value, x, y, z;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Dual4(Vector128<float> value, Vector128<float> x, Vector128<float> y, Vector128<float> z)
    {
        this.value = value;
        this.x = x;
        this.y = y;
        this.z = z;
    }

    public static int Width => 4;

    public Lanes4 Number
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(value);
    }

    public Lanes4 AlongX
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(x);
    }

    public Lanes4 AlongY
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(y);
    }

    public Lanes4 AlongZ
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 Of(Lanes4 value, Lanes4 x, Lanes4 y, Lanes4 z) => new(value.Vector, x.Vector, y.Vector, z.Vector);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 C(double value)
        => new(Vector128.Create((float)value), Vector128<float>.Zero, Vector128<float>.Zero, Vector128<float>.Zero);

    public static Dual4 Load(ref readonly float source) => throw new NotSupportedException("a dual number has four parts");

    public static void Store(Dual4 value, ref float target) => throw new NotSupportedException("a dual number has four parts");

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 operator +(Dual4 a, Dual4 b) => new(a.value + b.value, a.x + b.x, a.y + b.y, a.z + b.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 operator -(Dual4 a, Dual4 b) => new(a.value - b.value, a.x - b.x, a.y - b.y, a.z - b.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 operator *(Dual4 a, Dual4 b) => new(
        a.value * b.value,
        a.x * b.value + b.x * a.value,
        a.y * b.value + b.y * a.value,
        a.z * b.value + b.z * a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 operator -(Dual4 a) => new(-a.value, -a.x, -a.y, -a.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 Min(Dual4 a, Dual4 b) => Choose(Vector128.LessThan(b.value, a.value), b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 Max(Dual4 a, Dual4 b) => Choose(Vector128.LessThan(a.value, b.value), b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 Abs(Dual4 a) => Choose(Vector128.LessThan(a.value, Vector128<float>.Zero), -a, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 Sqrt(Dual4 a)
    {
        // The floor keeps the derivative finite where the root is zero: there it is a corner and has none.
        var root = Vector128.Sqrt(a.value);
        Vector128<float> twice = root + root, least = Vector128.Create(1e-12f);
        var half = Vector128<float>.One / Vector128.ConditionalSelect(Vector128.LessThan(twice, least), least, twice);
        return new Dual4(root, a.x * half, a.y * half, a.z * half);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 Reciprocal(Dual4 a)
    {
        var inverse = Vector128<float>.One / a.value;
        var slope = -(inverse * inverse);
        return new Dual4(inverse, a.x * slope, a.y * slope, a.z * slope);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual4 IfLess(Dual4 a, Dual4 b, Dual4 then, Dual4 otherwise)
        => Choose(Vector128.LessThan(a.value, b.value), then, otherwise);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Dual4 Choose(Vector128<float> where, Dual4 then, Dual4 otherwise) => new(
        Vector128.ConditionalSelect(where, then.value, otherwise.value),
        Vector128.ConditionalSelect(where, then.x, otherwise.x),
        Vector128.ConditionalSelect(where, then.y, otherwise.y),
        Vector128.ConditionalSelect(where, then.z, otherwise.z));
}
