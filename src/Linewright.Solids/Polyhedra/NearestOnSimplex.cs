using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>The point of a segment, triangle or tetrahedron nearest to the origin.</summary>
/// <remarks>Source: Ericson (2005), Real-Time Collision Detection, section 5.1, by which region of the triangle's plane the origin is over.</remarks>
internal static class NearestOnSimplex
{
    // A tetrahedron flatter than this (volume over the cube of its size) has no trustworthy inside.
    private const double FlatShare = 1e-12;

    /// <summary>Moves the corners that carry the nearest point to the front and gives their weights.</summary>
    /// <param name="corners">One to four; reordered.</param>
    /// <param name="weights">Room for four; above 0, summing to 1.</param>
    /// <returns>How many corners carry the point; 4 means that the origin is inside.</returns>
    public static int Reduce(Span<CornerPair> corners, Span<double> weights)
    {
        switch (corners.Length)
        {
            case 1:
                weights[0] = 1;
                return 1;
            case 2:
                return Segment(corners, weights);
            case 3:
                return Triangle(corners, weights);
            default:
                return Tetrahedron(corners, weights);
        }
    }

    private static int Segment(Span<CornerPair> corners, Span<double> weights)
    {
        Vec3 a = corners[0].Difference, along = corners[1].Difference - a;
        var share = -a.Dot(along) / along.Dot(along);
        if (share <= 0)
        {
            return One(corners, weights, 0);
        }

        return share >= 1 ? One(corners, weights, 1) : Two(corners, weights, 0, 1, share);
    }

    private static int Triangle(Span<CornerPair> corners, Span<double> weights)
    {
        Vec3 a = corners[0].Difference, b = corners[1].Difference, c = corners[2].Difference;
        Vec3 ab = b - a, ac = c - a;
        double d1 = -ab.Dot(a), d2 = -ac.Dot(a);
        if (d1 <= 0 && d2 <= 0)
        {
            return One(corners, weights, 0);
        }

        double d3 = -ab.Dot(b), d4 = -ac.Dot(b);
        if (d3 >= 0 && d4 <= d3)
        {
            return One(corners, weights, 1);
        }

        var overC = d1 * d4 - d3 * d2;
        if (overC <= 0 && d1 >= 0 && d3 <= 0)
        {
            return Two(corners, weights, 0, 1, d1 / (d1 - d3));
        }

        double d5 = -ab.Dot(c), d6 = -ac.Dot(c);
        if (d6 >= 0 && d5 <= d6)
        {
            return One(corners, weights, 2);
        }

        var overB = d5 * d2 - d1 * d6;
        if (overB <= 0 && d2 >= 0 && d6 <= 0)
        {
            return Two(corners, weights, 0, 2, d2 / (d2 - d6));
        }

        var overA = d3 * d6 - d5 * d4;
        if (overA <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
        {
            return Two(corners, weights, 1, 2, (d4 - d3) / (d4 - d3 + (d5 - d6)));
        }

        var whole = overA + overB + overC;
        (weights[0], weights[1], weights[2]) = (overA / whole, overB / whole, overC / whole);
        return 3;
    }

    private static int Tetrahedron(Span<CornerPair> corners, Span<double> weights)
    {
        Vec3 a = corners[0].Difference, b = corners[1].Difference, c = corners[2].Difference, d = corners[3].Difference;
        double size = Math.Max(Math.Max((b - a).Length, (c - a).Length), (d - a).Length);
        var volume = (b - a).Cross(c - a).Dot(d - a);
        var flat = Math.Abs(volume) <= FlatShare * size * size * size;

        // Weights of the origin; where all have the volume's sign it is inside.
        double wa = b.Cross(c).Dot(d), wb = -a.Cross(c).Dot(d), wc = a.Cross(b).Dot(d), wd = -a.Cross(b).Dot(c);
        var sign = Math.Sign(volume);
        if (!flat && wa * sign >= 0 && wb * sign >= 0 && wc * sign >= 0 && wd * sign >= 0)
        {
            var whole = wa + wb + wc + wd;
            (weights[0], weights[1], weights[2], weights[3]) = (wa / whole, wb / whole, wc / whole, wd / whole);
            return 4;
        }

        // Otherwise the best of the faces that the origin sees; of all where flatness blurs which those are.
        Span<CornerPair> best = stackalloc CornerPair[3], trial = stackalloc CornerPair[3];
        Span<double> bestWeights = stackalloc double[4], trialWeights = stackalloc double[4];
        var carried = 0;
        var nearest = double.PositiveInfinity;
        for (var left = 0; left < 4; left++)
        {
            var opposite = left switch { 0 => wa, 1 => wb, 2 => wc, _ => wd };
            if (!flat && opposite * sign >= 0)
            {
                continue;
            }

            for (int i = 0, k = 0; i < 4; i++)
            {
                if (i != left)
                {
                    trial[k++] = corners[i];
                }
            }

            var count = Triangle(trial, trialWeights);
            var at = Vec3.Zero;
            for (var i = 0; i < count; i++)
            {
                at += trial[i].Difference * trialWeights[i];
            }

            if (at.Dot(at) < nearest)
            {
                nearest = at.Dot(at);
                carried = count;
                trial.CopyTo(best);
                trialWeights.CopyTo(bestWeights);
            }
        }

        best.CopyTo(corners);
        bestWeights.CopyTo(weights);
        return carried;
    }

    private static int One(Span<CornerPair> corners, Span<double> weights, int index)
    {
        corners[0] = corners[index];
        weights[0] = 1;
        return 1;
    }

    private static int Two(Span<CornerPair> corners, Span<double> weights, int first, int second, double share)
    {
        (corners[0], corners[1]) = (corners[first], corners[second]);
        (weights[0], weights[1]) = (1 - share, share);
        return 2;
    }
}
