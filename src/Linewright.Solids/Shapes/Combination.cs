using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>Union (lower of the distances) or intersection (upper of them) of several solids, with one blend.</summary>
/// <remarks>
/// Operands are taken in their order, each blended with what came before. <see cref="Near"/> drops operands that
/// cannot change the value within the ball; what stays gives the same bits, since a blend is the plain minimum
/// wherever the two distances differ by more than its reach.
/// </remarks>
internal sealed class Combination : Solid
{
    // Far above the rounding of a float distance in a part of 100 mm, far below anything that matters.
    private const float Slack = 1e-4f;
    private readonly Solid[] parts;
    private readonly Blend blend;
    private readonly bool isCommon;
    private readonly int leafCount;

    private Combination(bool isCommon, Blend blend, Solid[] parts)
        : base(BoxOf(isCommon, blend, parts))
    {
        this.isCommon = isCommon;
        this.blend = blend;
        this.parts = parts;
        foreach (var part in parts)
        {
            leafCount += part.LeafCount;
        }
    }

    public override int LeafCount => leafCount;

    /// <summary>Combines; a single operand stays itself.</summary>
    public static Solid Of(bool isCommon, Blend blend, ReadOnlySpan<Solid> parts)
    {
        if (parts.Length == 0)
        {
            throw new ArgumentException("a combination needs at least one solid", nameof(parts));
        }

        return parts.Length == 1 ? parts[0] : new Combination(isCommon, blend, parts.ToArray());
    }

    public override double Distance(Vec3 p)
    {
        var d = new Real64(parts[0].Distance(p));
        for (var i = 1; i < parts.Length; i++)
        {
            d = Mix(d, new Real64(parts[i].Distance(p)));
        }

        return d.Value;
    }

    public override (double Distance, Vec3 Gradient) Sense(Vec3 p)
    {
        var d = Lift(parts[0].Sense(p));
        for (var i = 1; i < parts.Length; i++)
        {
            d = Mix(d, Lift(parts[i].Sense(p)));
        }

        return (d.Value.Value, new Vec3(d.X.Value, d.Y.Value, d.Z.Value));

        static Dual<Real64> Lift((double Distance, Vec3 Gradient) s)
            => new(new(s.Distance), new(s.Gradient.X), new(s.Gradient.Y), new(s.Gradient.Z));
    }

    public override float DistanceSingle(float x, float y, float z)
    {
        var d = new Real32(parts[0].DistanceSingle(x, y, z));
        for (var i = 1; i < parts.Length; i++)
        {
            d = Mix(d, new Real32(parts[i].DistanceSingle(x, y, z)));
        }

        return d.Value;
    }

    public override void Distances(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance, Arena arena)
    {
        parts[0].Distances(x, y, z, distance, arena);
        var mark = arena.Mark;
        var other = arena.Take(distance.Length);
        for (var i = 1; i < parts.Length; i++)
        {
            parts[i].Distances(x, y, z, other, arena);
            if (Vector512.IsHardwareAccelerated)
            {
                Fold<Lanes16>(distance, other);
            }
            else if (Vector256.IsHardwareAccelerated)
            {
                Fold<Lanes8>(distance, other);
            }
            else
            {
                Fold<Lanes4>(distance, other);
            }
        }

        arena.Release(mark);
    }

    public override void Gradients(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz, Arena arena)
    {
        parts[0].Gradients(x, y, z, distance, gx, gy, gz, arena);
        var mark = arena.Mark;
        var n = distance.Length;
        Span<float> d = arena.Take(n), hx = arena.Take(n), hy = arena.Take(n), hz = arena.Take(n);
        for (var i = 1; i < parts.Length; i++)
        {
            parts[i].Gradients(x, y, z, d, hx, hy, hz, arena);
            if (Vector512.IsHardwareAccelerated)
            {
                Fold<Lanes16, Dual16>(distance, gx, gy, gz, d, hx, hy, hz);
            }
            else if (Vector256.IsHardwareAccelerated)
            {
                Fold<Lanes8, Dual8>(distance, gx, gy, gz, d, hx, hy, hz);
            }
            else
            {
                Fold<Lanes4, Dual4>(distance, gx, gy, gz, d, hx, hy, hz);
            }
        }

        arena.Release(mark);
    }

    public override Solid Near(float x, float y, float z, float radius, out float distance)
    {
        var count = parts.Length;
        Span<float> at = count <= 64 ? stackalloc float[count] : new float[count];
        var near = new Solid[count];
        var side = isCommon ? -1f : 1f;
        var lowest = float.PositiveInfinity;
        for (var i = 0; i < count; i++)
        {
            near[i] = parts[i].Near(x, y, z, radius, out at[i]);
            lowest = MathF.Min(lowest, side * at[i]);
        }

        var d = new Real32(at[0]);
        for (var i = 1; i < count; i++)
        {
            d = Mix(d, new Real32(at[i]));
        }

        distance = d.Value;

        // An operand further than this from the lowest stays out of every blend within the ball. Operands that are
        // dropped could have lowered each other by a quarter of the reach a pair before meeting the lowest.
        var limit = lowest + 2 * radius + blend.Reach * (1 + 0.25f * count) + Slack;
        int kept = 0;
        var changed = false;
        for (var i = 0; i < count; i++)
        {
            if (side * at[i] > limit)
            {
                changed = true;
                continue;
            }

            changed |= !ReferenceEquals(near[i], parts[i]);
            near[kept++] = near[i];
        }

        if (!changed)
        {
            return this;
        }

        return kept == 1 ? near[0] : new Combination(isCommon, blend, near[..kept]);
    }

    public override Solid Moved(Pose pose) => Map(part => part.Moved(pose));

    public override Solid Grown(double by) => Map(part => part.Grown(by));

    public override Solid Complement()
        => new Combination(!isCommon, blend, Array.ConvertAll(parts, part => part.Complement()));

    private Combination Map(Converter<Solid, Solid> change) => new(isCommon, blend, Array.ConvertAll(parts, change));

    private static Bounds BoxOf(bool isCommon, Blend blend, Solid[] parts)
    {
        var box = isCommon ? Bounds.Everything : Bounds.Empty;
        foreach (var part in parts)
        {
            box = isCommon ? box.Meet(part.Bounds) : box.Join(part.Bounds);
        }

        // A blended union stands out by at most a quarter of the reach for each further operand.
        return isCommon || blend.Reach == 0 ? box : box.Grown(0.25 * blend.Reach * (parts.Length - 1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private T Mix<T>(T a, T b)
        where T : struct, IReal<T>
        => isCommon ? blend.Upper(a, b) : blend.Lower(a, b);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fold<T>(Span<float> a, ReadOnlySpan<float> b)
        where T : struct, IReal<T>
    {
        var common = isCommon;
        var by = blend;
        ref var into = ref MemoryMarshal.GetReference(a);
        ref readonly var other = ref MemoryMarshal.GetReference(b);
        for (var i = 0; i < a.Length; i += T.Width)
        {
            ref var cell = ref Unsafe.Add(ref into, i);
            T p = T.Load(in cell), q = T.Load(in Unsafe.Add(ref Unsafe.AsRef(in other), i));
            T.Store(common ? by.Upper(p, q) : by.Lower(p, q), ref cell);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fold<T, TDual>(
        Span<float> d, Span<float> gx, Span<float> gy, Span<float> gz,
        ReadOnlySpan<float> e, ReadOnlySpan<float> hx, ReadOnlySpan<float> hy, ReadOnlySpan<float> hz)
        where T : struct, IReal<T>
        where TDual : struct, IDual<TDual, T>
    {
        var common = isCommon;
        var by = blend;
        for (var i = 0; i < d.Length; i += T.Width)
        {
            var p = TDual.Of(T.Load(in d[i]), T.Load(in gx[i]), T.Load(in gy[i]), T.Load(in gz[i]));
            var q = TDual.Of(T.Load(in e[i]), T.Load(in hx[i]), T.Load(in hy[i]), T.Load(in hz[i]));
            var r = common ? by.Upper(p, q) : by.Lower(p, q);
            T.Store(r.Number, ref d[i]);
            T.Store(r.AlongX, ref gx[i]);
            T.Store(r.AlongY, ref gy[i]);
            T.Store(r.AlongZ, ref gz[i]);
        }
    }
}
