using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>The smallest gap between posed bodies.</summary>
/// <remarks>
/// Each body's probes are felt with the other's distance, both ways round, then the best few are refined to a pair of
/// surface points. Promised: a positive gap is the distance of two points that lie on the two surfaces within a
/// micrometre, so the true gap is no larger; it is smaller only where a feature finer than the probes' spacing, or
/// two crossing sharp edges between probes, escape both sets. A negative gap means that a surface point of one lies
/// at least that deep inside the other. Bodies so far apart that only far probes remain are as exact.
/// </remarks>
public static class Clearance
{
    // Separate candidates kept for refinement: a link touches its neighbour in a few places at most.
    private const int MostCandidates = 6;

    // How much lower than its nearest probe a surface may come, in covers. A cover is the worst distance to a probe;
    // the gap changes by as much only where a sharp edge stands square to the other surface, and edges carry probes
    // along themselves.
    private const double SlackInCovers = 0.5;

    // A candidate must promise at least this much to be refined, mm: less is below what any maker can see.
    private const double WorthwhileMm = 1e-3;

    /// <summary>The smallest gap between two bodies, each placed by its pose.</summary>
    public static ClearanceResult Between(
        Solid a, ProbeSurface probesA, Pose poseA, Solid b, ProbeSurface probesB, Pose poseB)
        => Between([new Body("", a, probesA)], poseA, [new Body("", b, probesB)], poseB);

    /// <summary>The smallest gap between any body of one side and any of the other, with their names.</summary>
    /// <param name="sideA">Bodies that share the first pose.</param>
    /// <param name="poseA">From their frame to the outer one.</param>
    /// <param name="sideB">Bodies that share the second pose.</param>
    /// <param name="poseB">From their frame to the outer one.</param>
    /// <param name="within">Gaps above this, mm, need not be found: the result may then be <see cref="ClearanceResult.None"/>.</param>
    public static ClearanceResult Between(
        ReadOnlySpan<Body> sideA, Pose poseA, ReadOnlySpan<Body> sideB, Pose poseB, double within = double.PositiveInfinity)
    {
        var best = ClearanceResult.None with { GapMm = within };
        var isFound = false;
        var toB = poseA.Then(poseB.Inverse());
        foreach (var a in sideA)
        {
            foreach (var b in sideB)
            {
                if (Pair(a, b, toB, best.GapMm) is { } pair)
                {
                    best = new ClearanceResult(pair.Gap, poseA.Point(pair.A), poseA.Point(pair.B), a.Name, b.Name);
                    isFound = true;
                }
            }
        }

        return isFound ? best : ClearanceResult.None;
    }

    /// <summary>The nearest pair of two bodies in the first one's frame, where nearer than a limit.</summary>
    private static (double Gap, Vec3 A, Vec3 B)? Pair(Body a, Body b, Pose toB, double limit)
    {
        var candidates = new List<Candidate>();
        var toA = toB.Inverse();
        var lowest = limit;
        Collect(a, b, toB, true, ref lowest, candidates);
        Collect(b, a, toA, false, ref lowest, candidates);
        candidates.Sort(static (p, q) => p.Distance.CompareTo(q.Distance));

        // Take the lowest, then others that stand apart from those taken and could still lead lower.
        (double Gap, Vec3 A, Vec3 B)? best = null;
        var taken = new List<Vec3>(MostCandidates);
        foreach (var c in candidates)
        {
            var own = c.IsOfA ? a : b;
            var cover = own.Probes.Cover;
            if (taken.Count == MostCandidates || c.Distance - cover * SlackInCovers > Math.Min(limit, best?.Gap ?? limit))
            {
                break;
            }

            var start = own.Probes.Point(c.Probe);
            var inA = c.IsOfA ? start : toA.Point(start);
            if (taken.Exists(t => (t - inA).Length < 2 * cover))
            {
                continue;
            }

            taken.Add(inA);
            var search = c.IsOfA
                ? new NearestPair(a.Solid, b.Solid, toB, start, Math.Abs(c.Distance) + 4 * cover)
                : new NearestPair(b.Solid, a.Solid, toA, start, Math.Abs(c.Distance) + 4 * cover);

            // Where the gap hardly slopes along the surface there is little to gain beyond what is known.
            if (best is { } known && c.Distance - search.SlopeAt(start) * cover > known.Gap - WorthwhileMm)
            {
                continue;
            }

            var pair = c.IsOfA ? search.From(start) : Turned(search.From(start));
            if (pair.Gap < (best?.Gap ?? limit))
            {
                best = pair;
            }
        }

        return best;

        (double Gap, Vec3 A, Vec3 B) Turned((double Gap, Vec3 Own, Vec3 Other) pair)
            => (pair.Gap, toA.Point(pair.Other), toA.Point(pair.Own));
    }

    private static void Collect(Body own, Body other, Pose toOther, bool isOfA, ref double lowest, List<Candidate> found)
    {
        var probes = own.Probes;
        if (probes.Count == 0)
        {
            return;
        }

        // The whole body first: its probes lie in one ball.
        var slack = probes.Cover * SlackInCovers;
        if (other.Solid.Distance(toOther.Point(probes.Centre)) - probes.OuterRadius > lowest + slack)
        {
            return;
        }

        var arena = Scratch.Arena;
        var mark = arena.Mark;
        var scan = new ProbeScan(probes, toOther, other.Solid, arena);

        // Look into the most promising cluster, so that its best probe rules most others out.
        var first = 0;
        for (var c = 1; c < probes.ClusterCount; c++)
        {
            first = scan.Lowest(c) < scan.Lowest(first) ? c : first;
        }

        lowest = Math.Min(lowest, Look(first, ref scan));
        for (var c = 0; c < probes.ClusterCount; c++)
        {
            if (c != first && scan.Lowest(c) <= lowest + slack)
            {
                lowest = Math.Min(lowest, Look(c, ref scan));
            }
        }

        arena.Release(mark);

        double Look(int cluster, ref ProbeScan scan)
        {
            var (distance, probe) = scan.Nearest(cluster);
            found.Add(new Candidate(distance, probe, isOfA));
            return distance;
        }
    }

    private readonly record struct Candidate(float Distance, int Probe, bool IsOfA);
}
