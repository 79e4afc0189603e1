using CsCheck;
using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;

namespace Linewright.Tests.Solids;

public class LanesTests
{
    private const int Count = 512;

    [Fact]
    public void Every_width_gives_the_same_bits()
    {
        // Through each primitive's own formula, placed awry so that the frame's arithmetic takes part.
        SameBits(new Ball(1.3));
        SameBits(new RoundCone(0.7, 0.25, 2));
        SameBits(new Torus(1.5, 0.4));
        SameBits(new TorusArc(1.5, 0.4, 0.8));
        SameBits(new RoundedBox(1, 0.7, 0.5, 0.2));
        SameBits(default(HalfSpace));
        SameBits(new Extrusion<CircleOutline>(new CircleOutline(0.8), 0.7, 0.1));
        SameBits(new Extrusion<PolygonOutline>(new PolygonOutline([(-1, -1), (1.2, -0.8), (1, 0.9), (0.1, 0.2), (-0.9, 1)], 0.1), 0.7, 0));
        SameBits(new Revolution<RectangleOutline>(new RectangleOutline(1.2, 0, 0.3, 0.4, 0.1)));
    }

    [Fact]
    public void Every_width_does_each_operation_alike_also_on_ties_zeros_and_infinities()
    {
        float[] special = [0f, -0f, 1f, -1f, 1.5f, 1e-40f, 1e30f, -1e30f, float.PositiveInfinity, float.NegativeInfinity, 0.1f, 3f, -3f, 2f, 7f, 1f / 3];
        float[] a = new float[256], b = new float[256];
        for (var i = 0; i < 256; i++)
        {
            (a[i], b[i]) = (special[i / 16], special[i % 16]);
        }

        var expected = Operations<Real32>(a, b);
        Assert.Equal(expected, Operations<Lanes4>(a, b));
        Assert.Equal(expected, Operations<Lanes8>(a, b));
        Assert.Equal(expected, Operations<Lanes16>(a, b));

        // The plain floats themselves: on a tie the first operand stays, even a negative zero.
        Assert.Equal(BitConverter.SingleToInt32Bits(-0f), expected[3 * 256 + 16]);
        Assert.Equal(BitConverter.SingleToInt32Bits(0f), expected[3 * 256 + 1]);
    }

    [Fact]
    public void The_written_out_duals_give_the_bits_of_the_generic_one()
    {
        SameDerivatives<Lanes16, Dual16>();
        SameDerivatives<Lanes8, Dual8>();
        SameDerivatives<Lanes4, Dual4>();
    }

    [Fact]
    public void A_dual_number_carries_the_derivatives_of_calculus()
    {
        Gen.Select(Gen.Double[0.2, 3], Gen.Double[0.2, 3]).Sample((x, y) =>
        {
            var u = new Dual<Real64>(new(x), new(1), new(0), new(0));
            var v = new Dual<Real64>(new(y), new(0), new(1), new(0));

            // f = sqrt(x y) + 1 / x - |y - x|; the derivatives by hand.
            var f = Dual<Real64>.Sqrt(u * v) + Dual<Real64>.Reciprocal(u) - Dual<Real64>.Abs(v - u);
            double root = Math.Sqrt(x * y), side = y < x ? -1 : 1;
            Assert.Equal(root + 1 / x - Math.Abs(y - x), f.Value.Value, 1e-12);
            Assert.Equal(y / (2 * root) - 1 / (x * x) + side, f.X.Value, 1e-9);
            Assert.Equal(x / (2 * root) - side, f.Y.Value, 1e-9);
            Assert.Equal(0, f.Z.Value, 1e-12);
        });
    }

    [Fact]
    public void The_root_of_nothing_has_a_finite_derivative()
    {
        var root = Dual<Real64>.Sqrt(new Dual<Real64>(new(0), new(0), new(1), new(0)));
        Assert.True(double.IsFinite(root.Y.Value));
        Assert.Equal(0, root.X.Value);
    }

    [Fact]
    public void Scratch_memory_is_taken_and_given_back_like_a_stack()
    {
        var arena = new Arena();
        var mark = arena.Mark;
        var first = arena.Take(17);
        first.Fill(1);
        var second = arena.Take(5);
        second.Fill(2);
        Assert.All(first.ToArray(), value => Assert.Equal(1, value));
        arena.Release(mark);
        Assert.Equal(mark, arena.Mark);
        Assert.Equal(3_000_000, arena.Take(3_000_000).Length);
    }

    private static void SameBits<TShape>(TShape shape)
        where TShape : struct, IShape
    {
        foreach (var solid in new[] { new Leaf<TShape>(shape), (Leaf<TShape>)new Leaf<TShape>(shape).Grown(0.1).Moved(HandMadeMeshes.Awry).Complement() })
        {
            var random = new Random(3);
            float[] x = new float[Count], y = new float[Count], z = new float[Count];
            for (var i = 0; i < Count; i++)
            {
                (x[i], y[i], z[i]) = (random.NextSingle() * 6 - 3, random.NextSingle() * 6 - 3, random.NextSingle() * 6 - 3);
            }

            // The first points lie on the frame's planes, where branches tie.
            (x[0], y[0], z[0], x[1], y[2], z[3]) = (0, 0, 0, 0, 0, 0);
            float[] one = new float[Count], four = new float[Count], eight = new float[Count], sixteen = new float[Count];
            solid.Fill<Real32>(x, y, z, one);
            solid.Fill<Lanes4>(x, y, z, four);
            solid.Fill<Lanes8>(x, y, z, eight);
            solid.Fill<Lanes16>(x, y, z, sixteen);
            Assert.Equal(Bits(one), Bits(four));
            Assert.Equal(Bits(one), Bits(eight));
            Assert.Equal(Bits(one), Bits(sixteen));
        }
    }

    private static int[] Bits(float[] values) => Array.ConvertAll(values, BitConverter.SingleToInt32Bits);

    private static int[] Operations<T>(float[] a, float[] b)
        where T : struct, IReal<T>
    {
        Func<T, T, T>[] all =
        [
            (p, q) => p + q, (p, q) => p - q, (p, q) => p * q, T.Min, T.Max,
            (p, _) => T.Abs(p), (p, _) => T.Sqrt(T.Abs(p)), (p, _) => T.Reciprocal(p), (p, _) => -p,
            (p, q) => T.IfLess(p, q, p + T.C(1), q),
        ];
        var results = new float[all.Length * a.Length];
        for (var k = 0; k < all.Length; k++)
        {
            for (var i = 0; i < a.Length; i += T.Width)
            {
                T.Store(all[k](T.Load(in a[i]), T.Load(in b[i])), ref results[k * a.Length + i]);
            }
        }

        // Not-a-number has many bit patterns; which one is no promise.
        return Array.ConvertAll(results, value => float.IsNaN(value) ? int.MinValue + 1 : BitConverter.SingleToInt32Bits(value));
    }

    private static void SameDerivatives<T, TDual>()
        where T : struct, IReal<T>
        where TDual : struct, IDual<TDual, T>
    {
        var random = new Random(7);
        var source = Enumerable.Range(0, 3 * 64).Select(i => i % 17 == 0 ? 0f : (float)(random.NextDouble() * 4 - 2)).ToArray();
        Assert.Equal(Derivatives<T, Dual<T>>(source), Derivatives<T, TDual>(source));
    }

    /// <summary>Every operation once, through two shapes and by itself.</summary>
    private static float[] Derivatives<T, TDual>(float[] source)
        where T : struct, IReal<T>
        where TDual : struct, IDual<TDual, T>
    {
        var results = new List<float>();
        T one = T.C(1), zero = T.C(0);
        for (var i = 0; i < 64; i += T.Width)
        {
            var x = TDual.Of(T.Load(in source[i]), one, zero, zero);
            var y = TDual.Of(T.Load(in source[64 + i]), zero, one, zero);
            var z = TDual.Of(T.Load(in source[128 + i]), zero, zero, one);
            Keep(new RoundedBox(1, 0.7, 0.5, 0.2).Distance(x, y, z));
            Keep(new TorusArc(1.5, 0.4, 0.8).Distance(x, y, z));
            Keep(TDual.Reciprocal(x + TDual.C(3)) - TDual.Abs(y) * TDual.Min(x, z));
            Keep(TDual.IfLess(x, y, TDual.Max(x, -z), TDual.Sqrt(TDual.Abs(y))));
        }

        return [.. results];

        void Keep(TDual d)
        {
            var lanes = new float[T.Width];
            foreach (var part in new[] { d.Number, d.AlongX, d.AlongY, d.AlongZ })
            {
                T.Store(part, ref lanes[0]);
                results.AddRange(lanes);
            }
        }
    }
}
