using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Linewright.Solids.Lanes;

/// <summary>16 floats at once with their derivatives: the same bits as <see cref="Dual{T}"/> of <see cref="Lanes16"/>.</summary>
/// <remarks>
/// Written out, because the compiler gives up inlining a formula in which every operation is several generic calls
/// deep; the generic form took two to forty-five times as long as this one.
/// </remarks>
public readonly struct Dual16 : IDual<Dual16, Lanes16>
{
    private readonly Vector512<float> value, x, y, z;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Dual16(Vector512<float> value, Vector512<float> x, Vector512<float> y, Vector512<float> z)
    {
        this.value = value;
        this.x = x;
        this.y = y;
        this.z = z;
    }

    public static int Width => 16;

    public Lanes16 Number
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(value);
    }

    public Lanes16 AlongX
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(x);
    }

    public Lanes16 AlongY
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(y);
    }

    public Lanes16 AlongZ
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 Of(Lanes16 value, Lanes16 x, Lanes16 y, Lanes16 z) => new(value.Vector, x.Vector, y.Vector, z.Vector);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 C(double value)
        => new(Vector512.Create((float)value), Vector512<float>.Zero, Vector512<float>.Zero, Vector512<float>.Zero);

    public static Dual16 Load(ref readonly float source) => throw new NotSupportedException("a dual number has four parts");

    public static void Store(Dual16 value, ref float target) => throw new NotSupportedException("a dual number has four parts");

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 operator +(Dual16 a, Dual16 b) => new(a.value + b.value, a.x + b.x, a.y + b.y, a.z + b.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 operator -(Dual16 a, Dual16 b) => new(a.value - b.value, a.x - b.x, a.y - b.y, a.z - b.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 operator *(Dual16 a, Dual16 b) => new(
        a.value * b.value,
        a.x * b.value + b.x * a.value,
        a.y * b.value + b.y * a.value,
        a.z * b.value + b.z * a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 operator -(Dual16 a) => new(-a.value, -a.x, -a.y, -a.z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 Min(Dual16 a, Dual16 b) => Choose(Vector512.LessThan(b.value, a.value), b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 Max(Dual16 a, Dual16 b) => Choose(Vector512.LessThan(a.value, b.value), b, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 Abs(Dual16 a) => Choose(Vector512.LessThan(a.value, Vector512<float>.Zero), -a, a);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 Sqrt(Dual16 a)
    {
        // The floor keeps the derivative finite where the root is zero: there it is a corner and has none.
        var root = Vector512.Sqrt(a.value);
        Vector512<float> twice = root + root, least = Vector512.Create(1e-12f);
        var half = Vector512<float>.One / Vector512.ConditionalSelect(Vector512.LessThan(twice, least), least, twice);
        return new Dual16(root, a.x * half, a.y * half, a.z * half);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 Reciprocal(Dual16 a)
    {
        var inverse = Vector512<float>.One / a.value;
        var slope = -(inverse * inverse);
        return new Dual16(inverse, a.x * slope, a.y * slope, a.z * slope);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual16 IfLess(Dual16 a, Dual16 b, Dual16 then, Dual16 otherwise)
        => Choose(Vector512.LessThan(a.value, b.value), then, otherwise);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Dual16 Choose(Vector512<float> where, Dual16 then, Dual16 otherwise) => new(
        Vector512.ConditionalSelect(where, then.value, otherwise.value),
        Vector512.ConditionalSelect(where, then.x, otherwise.x),
        Vector512.ConditionalSelect(where, then.y, otherwise.y),
        Vector512.ConditionalSelect(where, then.z, otherwise.z));
}
