using System.Runtime.CompilerServices;
using Linewright.Solids.Lanes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Shapes;

/// <summary>A simple polygon, counter-clockwise, with every corner rounded outwards by a radius (0 is sharp). Exact.</summary>
/// <remarks>
/// The polygon given is the outline's core: rounding grows it. Inside or outside is decided by crossings, so that
/// notches are allowed.
/// </remarks>
internal readonly struct PolygonOutline : IOutline
{
    private const int Stride = 7;
    private readonly double[] edges; // per edge: start u v, along u v, 1 / length squared, 1 / length, end v
    private readonly double round;

    public PolygonOutline(ReadOnlySpan<(double U, double V)> corners, double round)
    {
        if (corners.Length < 3)
        {
            throw new ArgumentException("a polygon has at least three corners", nameof(corners));
        }

        edges = new double[corners.Length * Stride];
        this.round = round;
        (double lowU, double highU, double lowV, double highV) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        for (var i = 0; i < corners.Length; i++)
        {
            var (u, v) = corners[i];
            var (nu, nv) = corners[(i + 1) % corners.Length];
            double du = nu - u, dv = nv - v, square = Guard.Positive(du * du + dv * dv);
            ReadOnlySpan<double> edge = [u, v, du, dv, 1 / square, 1 / Math.Sqrt(square), nv];
            edge.CopyTo(edges.AsSpan(i * Stride));
            (lowU, highU) = (Math.Min(lowU, u), Math.Max(highU, u));
            (lowV, highV) = (Math.Min(lowV, v), Math.Max(highV, v));
        }

        Reach = (lowU - round, highU + round, lowV - round, highV + round);
    }

    public (double LowU, double HighU, double LowV, double HighV) Reach { get; }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Distance<T>(T u, T v)
        where T : struct, IReal<T>
    {
        T best = T.C(1e30), side = T.C(1), one = T.C(1), zero = T.C(0), signed = zero, isBeside = -one;
        var e = edges;
        for (var i = 0; i + Stride <= e.Length; i += Stride)
        {
            T wu = u - T.C(e[i]), wv = v - T.C(e[i + 1]), du = T.C(e[i + 2]), dv = T.C(e[i + 3]);

            // Nearest point of this edge: beside it the plain distance to its line, past it the corner.
            var along = (wu * du + wv * dv) * T.C(e[i + 4]);
            var cross = du * wv - dv * wu;
            var clamped = T.Min(T.Max(along, zero), one);
            T cu = wu - du * clamped, cv = wv - dv * clamped;
            var beside = cross * T.C(e[i + 5]);
            var ends = T.Sqrt(cu * cu + cv * cv);
            var hasFoot = T.IfLess(zero, along, T.IfLess(along, one, one, -one), -one);
            var d = T.IfLess(zero, hasFoot, T.Abs(beside), ends);

            // Beside the nearest edge that edge alone says which side it is, so that the gradient has the right sign
            // on the surface itself too; at a corner the crossings say it.
            signed = T.IfLess(d, best, -beside, signed);
            isBeside = T.IfLess(d, best, hasFoot, isBeside);
            best = T.Min(best, d);

            // Count crossings of the ray along +u: three conditions that hold or fail together turn the side.
            // Both edges at a corner must compare with the very same number, or a point level with it is counted once.
            var starts = T.IfLess(v, T.C(e[i + 1]), -one, one);
            var stops = T.IfLess(v, T.C(e[i + 6]), one, -one);
            var left = T.IfLess(zero, cross, one, -one);
            side = side * T.IfLess(T.C(2), T.Abs(starts + stops + left), -one, one);
        }

        return T.IfLess(zero, isBeside, signed, side * best) - T.C(round);
    }
}
