using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>One primitive: placed, grown, and perhaps turned inside out.</summary>
internal sealed class Leaf<TShape> : Solid
    where TShape : struct, IShape
{
    private readonly TShape shape;
    private readonly Pose place;
    private readonly double grown;
    private readonly bool isComplement;
    private readonly Frame frame;

    public Leaf(TShape shape)
        : this(shape, Pose.Identity, 0, false)
    {
    }

    private Leaf(TShape shape, Pose place, double grown, bool isComplement)
        : base(isComplement ? Bounds.Everything : place.Box(shape.Bounds.Grown(grown)))
    {
        this.shape = shape;
        this.place = place;
        this.grown = grown;
        this.isComplement = isComplement;
        frame = new Frame(place.Inverse(), grown, isComplement);
    }

    public override int LeafCount => 1;

    public override double Distance(Vec3 p)
        => Value(in shape, in frame, new Real64(p.X), new Real64(p.Y), new Real64(p.Z)).Value;

    public override (double Distance, Vec3 Gradient) Sense(Vec3 p)
    {
        var d = Value(
            in shape,
            in frame,
            new Dual<Real64>(new(p.X), new(1), new(0), new(0)),
            new Dual<Real64>(new(p.Y), new(0), new(1), new(0)),
            new Dual<Real64>(new(p.Z), new(0), new(0), new(1)));
        return (d.Value.Value, new Vec3(d.X.Value, d.Y.Value, d.Z.Value));
    }

    public override float DistanceSingle(float x, float y, float z)
        => Value(in shape, in frame, new Real32(x), new Real32(y), new Real32(z)).Value;

    public override void Distances(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance, Arena arena)
    {
        if (Vector512.IsHardwareAccelerated)
        {
            Fill<Lanes16>(x, y, z, distance);
        }
        else if (Vector256.IsHardwareAccelerated)
        {
            Fill<Lanes8>(x, y, z, distance);
        }
        else
        {
            Fill<Lanes4>(x, y, z, distance);
        }
    }

    public override void Gradients(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz, Arena arena)
    {
        if (Vector512.IsHardwareAccelerated)
        {
            Fill<Lanes16, Dual16>(x, y, z, distance, gx, gy, gz);
        }
        else if (Vector256.IsHardwareAccelerated)
        {
            Fill<Lanes8, Dual8>(x, y, z, distance, gx, gy, gz);
        }
        else
        {
            Fill<Lanes4, Dual4>(x, y, z, distance, gx, gy, gz);
        }
    }

    public override Solid Near(float x, float y, float z, float radius, out float distance)
    {
        distance = DistanceSingle(x, y, z);
        return this;
    }

    public override Solid Moved(Pose pose) => new Leaf<TShape>(shape, place.Then(pose), grown, isComplement);

    public override Solid Grown(double by) => new Leaf<TShape>(shape, place, grown + (isComplement ? -by : by), isComplement);

    public override Solid Complement() => new Leaf<TShape>(shape, place, grown, !isComplement);

    /// <summary>Batch of one width; for tests that compare widths.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Fill<T>(ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> distance)
        where T : struct, IReal<T>
    {
        var local = shape;
        var to = frame;
        ref readonly var px = ref MemoryMarshal.GetReference(x);
        ref readonly var py = ref MemoryMarshal.GetReference(y);
        ref readonly var pz = ref MemoryMarshal.GetReference(z);
        ref var result = ref MemoryMarshal.GetReference(distance);
        for (var i = 0; i < distance.Length; i += T.Width)
        {
            var d = Value(
                in local,
                in to,
                T.Load(in Unsafe.Add(ref Unsafe.AsRef(in px), i)),
                T.Load(in Unsafe.Add(ref Unsafe.AsRef(in py), i)),
                T.Load(in Unsafe.Add(ref Unsafe.AsRef(in pz), i)));
            T.Store(d, ref Unsafe.Add(ref result, i));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fill<T, TDual>(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z,
        Span<float> distance, Span<float> gx, Span<float> gy, Span<float> gz)
        where T : struct, IReal<T>
        where TDual : struct, IDual<TDual, T>
    {
        var local = shape;
        var to = frame;
        T one = T.C(1), zero = T.C(0);
        for (var i = 0; i < distance.Length; i += T.Width)
        {
            var d = Value(
                in local,
                in to,
                TDual.Of(T.Load(in x[i]), one, zero, zero),
                TDual.Of(T.Load(in y[i]), zero, one, zero),
                TDual.Of(T.Load(in z[i]), zero, zero, one));
            T.Store(d.Number, ref distance[i]);
            T.Store(d.AlongX, ref gx[i]);
            T.Store(d.AlongY, ref gy[i]);
            T.Store(d.AlongZ, ref gz[i]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Value<T>(in TShape shape, in Frame to, T x, T y, T z)
        where T : struct, IReal<T>
    {
        T d;
        if (to.IsMove)
        {
            d = shape.Distance(x + T.C(to.OX), y + T.C(to.OY), z + T.C(to.OZ));
        }
        else
        {
            d = shape.Distance(
                x * T.C(to.XX) + y * T.C(to.YX) + z * T.C(to.ZX) + T.C(to.OX),
                x * T.C(to.XY) + y * T.C(to.YY) + z * T.C(to.ZY) + T.C(to.OY),
                x * T.C(to.XZ) + y * T.C(to.YZ) + z * T.C(to.ZZ) + T.C(to.OZ));
        }

        d = d - T.C(to.Grown);
        return to.IsComplement ? -d : d;
    }

    /// <summary>The way from the outer frame into the primitive's own, as plain numbers.</summary>
    private readonly struct Frame
    {
        public readonly double XX, XY, XZ, YX, YY, YZ, ZX, ZY, ZZ, OX, OY, OZ, Grown;
        public readonly bool IsMove, IsComplement;

        public Frame(Pose inverse, double grown, bool isComplement)
        {
            (XX, XY, XZ) = (inverse.AxisX.X, inverse.AxisX.Y, inverse.AxisX.Z);
            (YX, YY, YZ) = (inverse.AxisY.X, inverse.AxisY.Y, inverse.AxisY.Z);
            (ZX, ZY, ZZ) = (inverse.AxisZ.X, inverse.AxisZ.Y, inverse.AxisZ.Z);
            (OX, OY, OZ) = (inverse.Origin.X, inverse.Origin.Y, inverse.Origin.Z);
            Grown = grown;
            IsComplement = isComplement;
            IsMove = inverse with { Origin = Vec3.Zero } == Pose.Identity;
        }
    }
}
