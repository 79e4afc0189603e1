using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>From a point on one surface that is near another body, the pair of surface points that is nearest around there.</summary>
/// <remarks>
/// Slides the point along its own surface downhill in the other's distance (steepest descent, step lengths after
/// Barzilai and Borwein (1988), Two-point step size gradient methods), then projects the middle of the pair onto both
/// surfaces in turn, which also holds at edges where a distance is understated. Finds a local minimum; the caller
/// starts from every probe that may lead to the lowest.
/// </remarks>
internal readonly struct NearestPair
{
    // A slope along the surface below this changes the gap by less than a micrometre over a probe's spacing.
    private const double FlatSlope = 0.01;
    // Progress below a hundredth of a micrometre is none; a point this near to a surface lies on it.
    private const double Settled = 1e-5;
    private const double OnSurface = 1e-7;
    private const int MostSlides = 12;
    private const int MostProjections = 12;
    private const int MostHalvings = 4;

    private readonly Solid own, other;
    private readonly Solid nearOwn, nearOther;
    private readonly Pose toOther, toOwn;
    private readonly double reach;

    /// <summary>A search about a point, in the frame of the body that owns the surface.</summary>
    /// <param name="own">The body whose surface the point lies on.</param>
    /// <param name="other">The other body, in its own frame.</param>
    /// <param name="toOther">From the first frame to the second.</param>
    /// <param name="start">The point.</param>
    /// <param name="reach">How far from the point the search may go with the pruned bodies, mm.</param>
    public NearestPair(Solid own, Solid other, Pose toOther, Vec3 start, double reach)
    {
        (this.own, this.other, this.toOther, toOwn) = (own, other, toOther, toOther.Inverse());
        this.reach = reach;
        var there = toOther.Point(start);
        nearOwn = own.Near((float)start.X, (float)start.Y, (float)start.Z, (float)reach, out _);
        nearOther = other.Near((float)there.X, (float)there.Y, (float)there.Z, (float)reach, out _);
    }

    /// <summary>How fast the gap falls along the surface at a point of it; 0 where it is lowest, 1 at most.</summary>
    public double SlopeAt(Vec3 p) => Downhill(p).Slope.Length;

    /// <summary>The gap (negative: the depth of the point in the other body), and the two points in the owner's frame.</summary>
    public (double Gap, Vec3 Own, Vec3 Other) From(Vec3 start)
    {
        // What was pruned may matter where the slide led; the whole body has the last word.
        var p = OnOwn(Slide(Project(nearOwn, Pose.Identity, Pose.Identity, start)));
        var (depth, slope) = other.Sense(toOther.Point(p));
        if (depth <= 0)
        {
            return (depth, p, p - toOwn.Direction(slope) * depth);
        }

        var q = OnOther(p);
        var (best, bestP, bestQ) = ((p - q).Length, p, q);
        for (var round = 0; round < MostProjections; round++)
        {
            var middle = (p + q) * 0.5;
            (p, q) = (Project(nearOwn, Pose.Identity, Pose.Identity, middle), OnOther(middle));
            var gap = (p - q).Length;
            if (gap >= best - Settled)
            {
                break;
            }

            (best, bestP, bestQ) = (gap, p, q);
        }

        bestP = OnOwn(bestP);
        bestQ = Project(other, toOther, toOwn, bestQ);
        return ((bestP - bestQ).Length, bestP, bestQ);
    }

    private Vec3 OnOwn(Vec3 p) => Project(own, Pose.Identity, Pose.Identity, p);

    private Vec3 OnOther(Vec3 p) => Project(nearOther, toOther, toOwn, p);

    private Vec3 Slide(Vec3 p)
    {
        var start = p;
        var (value, slope) = Downhill(p);
        var step = 0.02;
        for (var round = 0; round < MostSlides && slope.Length > FlatSlope; round++)
        {
            // Halve the step until the gap shrinks; a step that only ever fails marks an edge.
            var (next, nextValue, nextSlope) = (p, value, slope);
            var tries = 0;
            do
            {
                next = Project(nearOwn, Pose.Identity, Pose.Identity, p - slope * step);
                (nextValue, nextSlope) = Downhill(next);
                step /= 2;
            }
            while (nextValue >= value && ++tries < MostHalvings);

            if (nextValue >= value - Settled || (next - start).Length > reach / 2)
            {
                break;
            }

            Vec3 moved = next - p, turned = nextSlope - slope;
            var curve = moved.Dot(turned);
            step = curve > 0 ? Math.Min(moved.Dot(moved) / curve, 0.2) : step * 8;
            (p, value, slope) = (next, nextValue, nextSlope);
        }

        return p;
    }

    /// <summary>The other's distance at a point of the own surface, and its gradient along that surface.</summary>
    private (double Value, Vec3 Slope) Downhill(Vec3 p)
    {
        var (value, gradient) = nearOther.Sense(toOther.Point(p));
        var here = toOwn.Direction(gradient);
        var normal = nearOwn.Sense(p).Gradient.Normalised();
        return (value, here - normal * here.Dot(normal));
    }

    private static Vec3 Project(Solid solid, Pose into, Pose back, Vec3 p)
    {
        for (var round = 0; round < 8; round++)
        {
            var (d, g) = solid.Sense(into.Point(p));
            if (Math.Abs(d) < OnSurface)
            {
                break;
            }

            p -= back.Direction(g) * (d / Math.Max(g.Dot(g), 0.25));
        }

        return p;
    }
}
