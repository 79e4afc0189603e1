using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>Two sides, one of which moves: asks at one parameter how much of the motion is surely free.</summary>
internal sealed class Sweep(ReadOnlySpan<Body> sideA, Pose poseA, ReadOnlySpan<Body> sideB, Func<double, Pose> poseB, double clearance)
{
    // A pair this near to the clearance is in contact: single precision knows no better.
    private const double Touch = 2e-6;

    private readonly Body[] sideA = sideA.ToArray(), sideB = sideB.ToArray();
    private readonly double clearance = Guard.InRange(clearance, 0, 1e3);
    private float[][] reachA = [], reachB = [];

    /// <summary>Sets how far the resting side's points move against the moving one for a unit of the parameter.</summary>
    public void ReachOfA(Func<Vec3, double> reach) => reachA = Array.ConvertAll(sideA, body => Reaches(body.Probes, reach));

    /// <summary>The same for the moving side.</summary>
    public void ReachOfB(Func<Vec3, double> reach) => reachB = Array.ConvertAll(sideB, body => Reaches(body.Probes, reach));

    /// <summary>
    /// How far the parameter may grow from here without a probe coming within the clearance, and the smallest gap of
    /// a probe here where it is below the one known.
    /// </summary>
    public (double Free, double Gap) Free(double at, double leastKnown)
    {
        var toB = poseA.Then(poseB(at).Inverse());
        var toA = toB.Inverse();
        var (free, gap) = (double.PositiveInfinity, leastKnown);
        for (var i = 0; i < sideA.Length; i++)
        {
            for (var j = 0; j < sideB.Length; j++)
            {
                Feel(sideA[i].Probes, reachA[i], sideB[j], toB, ref free, ref gap);
                Feel(sideB[j].Probes, reachB[j], sideA[i], toA, ref free, ref gap);
            }
        }

        return (free, gap);
    }

    /// <summary>True where the exact gap is within the clearance here, with the pair.</summary>
    public bool Touches(double at, out ClearanceResult pair)
    {
        pair = Clearance.Between(sideA, poseA, sideB, poseB(at), clearance + 2 * Touch);
        return pair.GapMm <= clearance + Touch;
    }

    /// <summary>The nearest pair here.</summary>
    public ClearanceResult Nearest(double at) => Clearance.Between(sideA, poseA, sideB, poseB(at));

    private void Feel(ProbeSurface probes, float[] reach, Body other, Pose toOther, ref double free, ref double gap)
    {
        if (probes.Count == 0)
        {
            return;
        }

        // The whole body first: its probes lie in one ball.
        var whole = other.Solid.Distance(toOther.Point(probes.Centre)) - probes.OuterRadius;
        if (whole > gap && whole - clearance > free * reach[^1])
        {
            return;
        }

        var arena = Scratch.Arena;
        var mark = arena.Mark;
        var scan = new ProbeScan(probes, toOther, other.Solid, arena);
        var first = 0;
        for (var c = 1; c < probes.ClusterCount; c++)
        {
            first = (scan.Lowest(c) - clearance) * reach[first] < (scan.Lowest(first) - clearance) * reach[c] ? c : first;
        }

        Look(first, ref scan, ref free, ref gap);
        for (var c = 0; c < probes.ClusterCount; c++)
        {
            if (c != first && (scan.Lowest(c) < gap || scan.Lowest(c) - clearance < free * reach[c]))
            {
                Look(c, ref scan, ref free, ref gap);
            }
        }

        arena.Release(mark);

        void Look(int cluster, ref ProbeScan scan, ref double free, ref double gap)
        {
            double distance = scan.Nearest(cluster).Distance;
            gap = Math.Min(gap, distance);
            free = Math.Min(free, Math.Max(0, distance - clearance) / reach[cluster]);
        }
    }

    /// <summary>Per cluster the largest motion of any of its probes; last the largest of all.</summary>
    private static float[] Reaches(ProbeSurface probes, Func<Vec3, double> reach)
    {
        var result = new float[probes.ClusterCount + 1];
        for (var c = 0; c < probes.ClusterCount; c++)
        {
            for (var i = c * ProbeSurface.ClusterSize; i < (c + 1) * ProbeSurface.ClusterSize; i++)
            {
                // A little more than zero, so that a probe on the axis does not divide by it.
                result[c] = Math.Max(result[c], (float)reach(probes.Point(i)) + 1e-3f);
            }

            result[^1] = Math.Max(result[^1], result[c]);
        }

        return result;
    }
}
