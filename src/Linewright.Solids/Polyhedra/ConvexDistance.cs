using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>Distance between two convex polyhedra, each in its own placement.</summary>
/// <remarks>
/// Source: Gilbert, Johnson, Keerthi (1988), IEEE J. Robotics and Automation 4(2): walk through simplices of
/// differences of corners towards the origin. Each step also yields a separating plane, so the answer carries its own
/// lower bound; the walk ends when bound and distance agree within 1e-12 mm, or rounding stops it. The distance is good
/// to rounding. The bound is a few grains below it for bodies a micrometre apart or more; where faces are parallel but for
/// 1e-8 rad, or bodies nearer than that, it may stay 1e-8 mm below. Bodies nearer than 1e-12 mm count as touching.
/// </remarks>
public static class ConvexDistance
{
    private const double Agreement = 1e-12;

    // A few roundings of a length.
    private const double Grain = 1e-15;

    // Brilliants take 5 to 15 steps; the rest is for bodies with large near-parallel faces.
    private const int MostSteps = 100;

    /// <summary>Measures two bodies.</summary>
    /// <param name="first">One body.</param>
    /// <param name="firstPose">Where it stands.</param>
    /// <param name="second">The other.</param>
    /// <param name="secondPose">Where that stands.</param>
    public static Separation Between(ConvexPolyhedron first, Pose firstPose, ConvexPolyhedron second, Pose secondPose)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);

        // All in the first body's frame.
        var toFirst = secondPose.Then(firstPose.Inverse());
        var toSecond = toFirst.Inverse();
        Span<CornerPair> corners = stackalloc CornerPair[4];
        Span<double> weights = stackalloc double[4];
        var count = 0;
        var gap = first.Centroid - toFirst.Point(second.Centroid);
        if (!(gap.Length > 0))
        {
            gap = Vec3.UnitX;
        }

        double distance = double.PositiveInfinity, bound = double.NegativeInfinity;
        Vec3 onFirst = first.Centroid, onSecond = onFirst;
        for (var step = 0; step < MostSteps; step++)
        {
            // The corners farthest towards each other along the present gap; no point of either passes their planes.
            Vec3 a = first.Vertices[first.Farthest(-gap)], b = toFirst.Point(second.Vertices[second.Farthest(toSecond.Direction(gap))]);
            var next = new CornerPair(a, b);
            bound = Math.Max(bound, gap.Dot(next.Difference) / gap.Length);
            if (distance - bound <= Agreement || Holds(corners[..count], next))
            {
                break;
            }

            // The point of the grown simplex nearest to the origin, on the fewest corners that carry it.
            corners[count++] = next;
            count = NearestOnSimplex.Reduce(corners[..count], weights);
            Vec3 p = Vec3.Zero, q = Vec3.Zero;
            for (var i = 0; i < count; i++)
            {
                p += corners[i].OnFirst * weights[i];
                q += corners[i].OnSecond * weights[i];
            }

            var nearer = p - q;
            if (count == 4 || nearer.Length <= Agreement)
            {
                return new Separation(0, 0, firstPose.Point(p), firstPose.Point(q));
            }

            // Between near-parallel faces a turn too small to shorten the gap still tightens the bound: go on while it is no longer.
            gap = nearer;
            if (nearer.Length < distance)
            {
                (distance, onFirst, onSecond) = (nearer.Length, p, q);
            }
            else if (nearer.Length > distance * (1 + Grain))
            {
                break;
            }
        }

        return new Separation(distance, Math.Clamp(bound, 0, distance), firstPose.Point(onFirst), firstPose.Point(onSecond));
    }

    private static bool Holds(ReadOnlySpan<CornerPair> corners, CornerPair next)
    {
        foreach (var corner in corners)
        {
            if (corner == next)
            {
                return true;
            }
        }

        return false;
    }
}
