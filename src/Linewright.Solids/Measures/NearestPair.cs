using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>From a point on one surface that is near another body, the pair of surface points that is nearest around there.</summary>
/// <remarks>
/// Slides the point along its own surface downhill in the other's distance (steepest descent, step lengths after
/// Barzilai and Borwein (1988), Two-point step size gradient methods), then projects the middle of the pair onto both
/// surfaces in turn, which also holds at edges where a distance is a little understated. Beside a deep cut the distance
/// leads to what was cut away, and no projection ends on metal: then the other body's probe nearest to the point stands
/// in, and both points are drawn together along their own surfaces. Finds a local minimum; the caller starts from every
/// probe that may lead to the lowest.
/// </remarks>
internal sealed class NearestPair
{
    // A slope along the surface below this changes the gap by less than a micrometre over a probe's spacing.
    private const double FlatSlope = 0.01;
    // Progress below a hundredth of a micrometre is none; a point this near to a surface lies on it.
    private const double Settled = 1e-5;
    private const double OnSurface = 1e-7;

    // A projection that ends further from the surface has led nowhere: what it found is no point of the body.
    private const double OffSurface = 2e-5;
    private const int MostSlides = 12;
    private const int MostProjections = 12;
    private const int MostHalvings = 4;

    // Drawing two points together ends when a hundredth of the gap is too long a step.
    private const int MostDraws = 40;
    private const double LeastDraw = 0.01;

    private readonly Solid own, other;
    private readonly ProbeSurface ownProbes, otherProbes;
    private readonly Solid nearOwn, nearOther;
    private readonly Pose toOther, toOwn;
    private readonly double reach;

    /// <summary>A search about a point, in the frame of the body that owns the surface.</summary>
    /// <param name="ownBody">The body whose surface the point lies on.</param>
    /// <param name="otherBody">The other body, in its own frame.</param>
    /// <param name="toOther">From the first frame to the second.</param>
    /// <param name="start">The point.</param>
    /// <param name="reach">How far from the point the search may go with the pruned bodies, mm.</param>
    public NearestPair(Body ownBody, Body otherBody, Pose toOther, Vec3 start, double reach)
    {
        (own, other) = (ownBody.Solid, otherBody.Solid);
        (ownProbes, otherProbes) = (ownBody.Probes, otherBody.Probes);
        (this.toOther, toOwn, this.reach) = (toOther, toOther.Inverse(), reach);
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
        if (!IsOnOther(q))
        {
            return DrawTogether(p, OtherProbe(p));
        }

        var (best, bestP, bestQ) = ((p - q).Length, p, q);
        for (var round = 0; round < MostProjections; round++)
        {
            var middle = (p + q) * 0.5;
            (p, q) = (Project(nearOwn, Pose.Identity, Pose.Identity, middle), OnOther(middle));
            var gap = (p - q).Length;
            if (gap >= best - Settled || !IsOnOwn(p) || !IsOnOther(q))
            {
                break;
            }

            (best, bestP, bestQ) = (gap, p, q);
        }

        (p, q) = (OnOwn(bestP), Project(other, toOther, toOwn, bestQ));
        return IsOnOwn(p) && IsOnOther(q) ? ((p - q).Length, p, q) : DrawTogether(start, OtherProbe(start));
    }

    /// <summary>The pair that the two bodies' nearest probes lead to, where those are nearer than a limit, mm.</summary>
    public (double Gap, Vec3 Own, Vec3 Other) FromProbes(double limit)
    {
        var (nearest, best) = (limit, (Own: Vec3.Zero, Other: Vec3.Zero));
        for (var c = 0; c < ownProbes.ClusterCount; c++)
        {
            var centre = toOther.Point(new Vec3(ownProbes.CentreX[c], ownProbes.CentreY[c], ownProbes.CentreZ[c]));
            if ((otherProbes.NearestTo(centre, nearest + ownProbes.Radius[c]) - centre).Length - ownProbes.Radius[c] >= nearest)
            {
                continue;
            }

            for (var i = c * ProbeSurface.ClusterSize; i < (c + 1) * ProbeSurface.ClusterSize; i++)
            {
                Vec3 p = toOther.Point(ownProbes.Point(i)), q = otherProbes.NearestTo(p, nearest);
                var distance = (p - q).Length;
                (nearest, best) = distance < nearest ? (distance, (ownProbes.Point(i), toOwn.Point(q))) : (nearest, best);
            }
        }

        return nearest < limit ? DrawTogether(best.Own, best.Other) : (double.PositiveInfinity, best.Own, best.Other);
    }

    /// <summary>Moves each of two surface points along its surface towards the other, as long as they come nearer.</summary>
    private (double Gap, Vec3 Own, Vec3 Other) DrawTogether(Vec3 p, Vec3 q)
    {
        var (gap, share) = ((p - q).Length, 0.5);
        for (var round = 0; round < MostDraws && share > LeastDraw && gap > OffSurface; round++)
        {
            var before = gap;
            Take(OnOwn(p + (q - p) * share), q);
            Take(p, Project(other, toOther, toOwn, q + (p - q) * share));
            if (gap == before)
            {
                // Along an edge the way to the nearest point need not be downhill: a probe may lie beyond.
                Take(OwnProbe(q), q);
                Take(p, OtherProbe(p));
                share = gap < before ? 0.5 : share / 2;
            }
        }

        return (gap, p, q);

        void Take(Vec3 nextP, Vec3 nextQ)
        {
            var next = (nextP - nextQ).Length;
            if (next < gap - Settled && IsOnOwn(nextP) && IsOnOther(nextQ))
            {
                (p, q, gap) = (nextP, nextQ, next);
            }
        }
    }

    /// <summary>The probes nearest to a point, in the owner's frame; the point itself where a body has none.</summary>
    private Vec3 OwnProbe(Vec3 p) => ownProbes.Count == 0 ? p : ownProbes.NearestTo(p, double.PositiveInfinity);

    private Vec3 OtherProbe(Vec3 p) => otherProbes.Count == 0 ? p : toOwn.Point(otherProbes.NearestTo(toOther.Point(p), double.PositiveInfinity));

    private bool IsOnOwn(Vec3 p) => Math.Abs(own.Distance(p)) <= OffSurface;

    private bool IsOnOther(Vec3 q) => Math.Abs(other.Distance(toOther.Point(q))) <= OffSurface;

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
