using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>The point of a segment, triangle or tetrahedron nearest to the origin.</summary>
/// <remarks>
/// By weights where the origin is over the inside, by the nearest side where not: a little slower than sorting the
/// regions around a triangle, but it cannot go astray on thin ones, which sorting did.
/// </remarks>
internal static class NearestOnSimplex
{
    // A triangle thinner than this (squared sine of an angle) and a tetrahedron flatter than that (volume over the
    // cube of the farthest corner's distance) have no trustworthy inside; a weight below the last is neither in nor out.
    private const double ThinShare = 1e-22;
    private const double FlatShare = 1e-12;
    private const double SideShare = 1e-14;

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
        var share = Share(corners[0].Difference, corners[1].Difference);
        return share <= 0 ? One(corners, weights, 0)
            : share >= 1 ? One(corners, weights, 1)
            : Two(corners, weights, 0, 1, share);
    }

    private static int Triangle(Span<CornerPair> corners, Span<double> weights)
    {
        // Over the inside: weights are areas seen along the triangle's normal.
        Vec3 a = corners[0].Difference, b = corners[1].Difference, c = corners[2].Difference;
        Vec3 ab = b - a, ac = c - a, normal = ab.Cross(ac);
        var whole = normal.Dot(normal);
        if (whole > ThinShare * ab.Dot(ab) * ac.Dot(ac))
        {
            double overA = normal.Dot(b.Cross(c)), overB = normal.Dot(c.Cross(a)), overC = normal.Dot(a.Cross(b));
            if (overA > 0 && overB > 0 && overC > 0)
            {
                var sum = overA + overB + overC;
                (weights[0], weights[1], weights[2]) = (overA / sum, overB / sum, overC / sum);
                return 3;
            }
        }

        // Otherwise on the nearest of its sides.
        int first = 0, second = 1;
        var nearest = double.PositiveInfinity;
        for (var i = 0; i < 3; i++)
        {
            Vec3 from = corners[i].Difference, to = corners[(i + 1) % 3].Difference;
            var at = from + (to - from) * Share(from, to);
            if (at.Dot(at) < nearest)
            {
                (nearest, first, second) = (at.Dot(at), i, (i + 1) % 3);
            }
        }

        var share = Share(corners[first].Difference, corners[second].Difference);
        return share <= 0 ? One(corners, weights, first)
            : share >= 1 ? One(corners, weights, second)
            : Two(corners, weights, first, second, share);
    }

    /// <summary>How far along from one point to another the foot of the origin lies, kept between them.</summary>
    private static double Share(Vec3 from, Vec3 to)
    {
        var along = to - from;
        var square = along.Dot(along);
        return square > 0 ? Math.Clamp(-from.Dot(along) / square, 0, 1) : 0;
    }

    private static int Tetrahedron(Span<CornerPair> corners, Span<double> weights)
    {
        Vec3 a = corners[0].Difference, b = corners[1].Difference, c = corners[2].Difference, d = corners[3].Difference;
        double size = Math.Max(Math.Max(a.Length, b.Length), Math.Max(c.Length, d.Length)), cube = size * size * size;
        var volume = (b - a).Cross(c - a).Dot(d - a);
        var flat = Math.Abs(volume) <= FlatShare * cube;

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
            if (!flat && opposite * sign > SideShare * cube)
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
