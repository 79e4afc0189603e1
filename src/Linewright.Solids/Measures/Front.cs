using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>One body's probes on their way past another body: each cluster of them takes its own steps.</summary>
/// <param name="Probes">The probes, in their body's frame.</param>
/// <param name="Reach">How far any probe of a cluster moves against the other body for a unit of the parameter, mm; by cluster.</param>
/// <param name="Other">The body that is passed.</param>
/// <param name="IsOfA">True where the probes belong to the resting side.</param>
internal sealed record Front(ProbeSurface Probes, double[] Reach, Body Other, bool IsOfA)
{
    // A cluster nearer than its own radius is looked into; further off its ball says enough.
    private const double LookWithin = 1;

    // A little more than zero, so that a probe on the axis does not divide by it, mm.
    private const double LeastReach = 1e-3;

    /// <summary>By cluster the largest motion of any of its probes for a unit of the parameter, mm.</summary>
    public static double[] Reaches(ProbeSurface probes, Func<Vec3, double> reach)
    {
        var reaches = new double[probes.ClusterCount];
        for (var i = 0; i < reaches.Length * ProbeSurface.ClusterSize; i++)
        {
            ref var most = ref reaches[i / ProbeSurface.ClusterSize];
            most = Math.Max(most, reach(probes.Point(i)) + LeastReach);
        }

        return reaches;
    }

    /// <summary>No probe of a cluster comes nearer than this while the parameter grows by less than the free way found.</summary>
    /// <param name="cluster">The cluster.</param>
    /// <param name="toOther">From the probes' frame to the other body's, here.</param>
    /// <param name="clearance">The gap that counts as contact, mm.</param>
    /// <param name="least">Smallest gap of any probe so far, mm; lowered where this cluster has a smaller one.</param>
    /// <returns>How far the parameter may grow without contact.</returns>
    public double Free(int cluster, Pose toOther, double clearance, ref double least)
    {
        var centre = toOther.Point(new Vec3(Probes.CentreX[cluster], Probes.CentreY[cluster], Probes.CentreZ[cluster]));
        double radius = Probes.Radius[cluster];
        var near = Other.Near(centre, radius);
        var gap = near.DistanceSingle((float)centre.X, (float)centre.Y, (float)centre.Z) - radius;
        if (gap < least || gap - clearance < LookWithin * radius)
        {
            gap = ProbeScan.Nearest(Probes, cluster, toOther, near).Distance;
            least = Math.Min(least, gap);
        }

        return Math.Max(0, gap - clearance) / Reach[cluster];
    }
}
