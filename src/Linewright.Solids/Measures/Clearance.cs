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
    private const int MostCandidates = 6, MostTaken = 24;

    // How much lower than its nearest probe a surface may come, in covers. A cover is the worst distance to a probe;
    // the gap changes by as much only where a sharp edge stands square to the other surface, and edges carry probes
    // along themselves.
    private const double SlackInCovers = 0.5;

    // How much the slope along a surface grows on average from a probe to the lowest point near it: a radius of 0.2 mm
    // turns by more within a cover, but such an edge has a probe within half of one.
    private const double MostSlopeGrowth = 0.1;

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
        => Find(sideA, poseA, sideB, poseB, within).Result;

    /// <summary>The same, with what it takes to follow the pair.</summary>
    internal static FeltPair Find(ReadOnlySpan<Body> sideA, Pose poseA, ReadOnlySpan<Body> sideB, Pose poseB, double within)
    {
        var best = FeltPair.None;
        var least = within;
        var toB = poseA.Then(poseB.Inverse());
        for (var i = 0; i < sideA.Length; i++)
        {
            for (var j = 0; j < sideB.Length; j++)
            {
                if (Pair(sideA[i], sideB[j], toB, least) is { } pair)
                {
                    var result = new ClearanceResult(
                        pair.Gap, poseA.Point(pair.A), poseA.Point(pair.B), sideA[i].Name, sideB[j].Name);
                    best = new FeltPair(result, i, j, pair.IsOfA, pair.IsOfA ? pair.A : toB.Point(pair.B));
                    least = pair.Gap;
                }
            }
        }

        return best;
    }

    /// <summary>The nearest pair of two bodies in the first one's frame, where nearer than a limit.</summary>
    private static (double Gap, Vec3 A, Vec3 B, bool IsOfA)? Pair(Body a, Body b, Pose toB, double limit)
    {
        var candidates = new List<Candidate>();
        var toA = toB.Inverse();
        var lowest = limit;
        Collect(a.Probes, b, toB, true, ref lowest, candidates);
        Collect(b.Probes, a, toA, false, ref lowest, candidates);
        candidates.Sort(static (p, q) => p.Distance.CompareTo(q.Distance));

        // Take the lowest, then others that stand apart from those taken and could still lead lower.
        (double Gap, Vec3 A, Vec3 B, bool IsOfA)? best = null;
        var taken = new List<Vec3>(MostCandidates);
        var (found, isUnderstated) = (0, false);
        foreach (var c in candidates)
        {
            var (own, other) = c.IsOfA ? (a, b) : (b, a);
            var cover = own.Probes.Cover;
            if (found == MostCandidates || taken.Count == MostTaken || c.Distance - cover * SlackInCovers > Math.Min(limit, best?.Gap ?? limit))
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
            var search = new NearestPair(own, other, c.IsOfA ? toB : toA, start, Math.Abs(c.Distance) + 4 * cover);

            // Where the gap hardly slopes along the surface there is little to gain beyond what is known, or asked for.
            var slope = search.SlopeAt(start);
            if (c.Distance - (slope + MostSlopeGrowth) * cover > limit
                || (best is { } known && c.Distance - slope * cover > known.Gap - WorthwhileMm))
            {
                continue;
            }

            var (gap, onOwn, onOther) = search.From(start);

            // Beside a deep cut a probe feels what was cut away: that is no place, and others must be looked at instead.
            found += gap <= c.Distance + 2 * cover ? 1 : 0;
            isUnderstated |= gap > c.Distance + WorthwhileMm;
            if (gap < (best?.Gap ?? limit))
            {
                best = c.IsOfA ? (gap, onOwn, onOther, true) : (gap, toA.Point(onOther), toA.Point(onOwn), false);
            }
        }

        // A distance that understates hides which places are nearest: the probes themselves tell.
        if (isUnderstated && best is { Gap: > 0 } felt)
        {
            var reach = felt.Gap + 4 * a.Probes.Cover;
            var (gap, onA, onB) = new NearestPair(a, b, toB, felt.A, reach).FromProbes(felt.Gap);
            best = gap < felt.Gap ? (gap, onA, onB, true) : best;
        }

        return best;
    }

    private static void Collect(ProbeSurface probes, Body other, Pose toOther, bool isOfA, ref double lowest, List<Candidate> found)
    {
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
        var scan = new ProbeScan(probes, toOther, other, arena);

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
