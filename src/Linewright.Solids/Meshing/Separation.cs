using System.Runtime.CompilerServices;
using Linewright.Solids.Space;

namespace Linewright.Solids.Meshing;

/// <summary>A quick look that clears most pairs of neighbouring triangles without exact arithmetic.</summary>
/// <remarks>
/// It looks for one plane between the two, far enough from both to be beyond rounding; where it finds none the pair
/// is not clear and must be looked at exactly. Without it, flat faces drive nearly every pair into whole numbers.
/// </remarks>
internal static class Separation
{
    // Differences of floats and a product of three of them err by some 2^-52 of their size; this is four thousand times that.
    private const double Rounding = 1e-12;

    /// <summary>True where the triangles surely meet at their shared vertices alone.</summary>
    /// <param name="positions">x, y, z of each vertex.</param>
    /// <param name="s">One triangle.</param>
    /// <param name="t">The other.</param>
    /// <param name="restS">Its vertices that are not shared.</param>
    /// <param name="restT">The other's.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool IsClear(
        ReadOnlySpan<float> positions, ReadOnlySpan<int> s, ReadOnlySpan<int> t, ReadOnlySpan<int> restS, ReadOnlySpan<int> restT)
    {
        if (restS.Length == 1)
        {
            return OpensAtEdge(positions, s, restS[0], restT[0]);
        }

        // Measured from the shared vertex, or from any: then the plane may pass at any height.
        var isFree = restS.Length == 3;
        var origin = isFree ? s[0] : Shared(s, restS);
        Vec3 meanS = default, meanT = default;
        foreach (var v in restS)
        {
            meanS += From(positions, origin, v);
        }

        foreach (var v in restT)
        {
            meanT += From(positions, origin, v);
        }

        // The way from one to the other; round a shared vertex the way between their directions.
        var way = isFree ? meanS - meanT : meanS.Normalised() - meanT.Normalised();
        double lowS = double.PositiveInfinity, highT = double.NegativeInfinity, size = 0;
        foreach (var v in restS)
        {
            var along = way.Dot(From(positions, origin, v));
            lowS = Math.Min(lowS, along);
            size = Math.Max(size, Math.Abs(along));
        }

        foreach (var v in restT)
        {
            var along = way.Dot(From(positions, origin, v));
            highT = Math.Max(highT, along);
            size = Math.Max(size, Math.Abs(along));
        }

        var margin = Rounding * (size + way.Length * (meanS.Length + meanT.Length));
        return isFree ? lowS - highT > margin : lowS > margin && highT < -margin;
    }

    /// <summary>Two triangles at an edge are clear where their far corners lie more than a right angle apart about it.</summary>
    private static bool OpensAtEdge(ReadOnlySpan<float> positions, ReadOnlySpan<int> s, int apexS, int apexT)
    {
        var at = s.IndexOf(apexS);
        int from = s[(at + 1) % 3], to = s[(at + 2) % 3];
        Vec3 edge = From(positions, from, to), a = edge.Cross(From(positions, from, apexS)), b = edge.Cross(From(positions, from, apexT));
        return a.Dot(b) < -Rounding * a.Length * b.Length;
    }

    private static int Shared(ReadOnlySpan<int> s, ReadOnlySpan<int> rest)
    {
        foreach (var v in s)
        {
            if (!rest.Contains(v))
            {
                return v;
            }
        }

        return s[0];
    }

    private static Vec3 From(ReadOnlySpan<float> p, int origin, int v) => new(
        (double)p[v * 3] - p[origin * 3], (double)p[v * 3 + 1] - p[origin * 3 + 1], (double)p[v * 3 + 2] - p[origin * 3 + 2]);
}
