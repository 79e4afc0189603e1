using Linewright.Solids.Lanes;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>One surface's probes placed in another solid's frame, and what that solid's distance says about their clusters.</summary>
/// <remarks>
/// A cluster's ball of radius r about c has no point nearer than d(c) - r, since a distance never overstates: the
/// clusters that are looked into are enough, and the result is the same as that of looking into all.
/// </remarks>
internal ref struct ProbeScan
{
    private readonly ProbeSurface probes;
    private readonly Body other;
    private readonly Pose pose;
    private readonly Span<float> lowest; // per cluster: no probe is nearer than this

    /// <summary>Places the probes by a pose from their frame to the other body's; memory comes from the arena, which the caller releases.</summary>
    public ProbeScan(ProbeSurface probes, Pose pose, Body other, Arena arena)
    {
        this.probes = probes;
        this.other = other;
        this.pose = pose;
        var padded = probes.CentreX.Length;
        lowest = arena.Take(padded);
        var mark = arena.Mark;
        Span<float> x = arena.Take(padded), y = arena.Take(padded), z = arena.Take(padded);
        Place(pose, probes.CentreX, probes.CentreY, probes.CentreZ, x, y, z);
        other.Solid.Distances(x, y, z, lowest, arena);
        arena.Release(mark);
        for (var c = 0; c < probes.ClusterCount; c++)
        {
            lowest[c] -= probes.Radius[c];
        }
    }

    /// <summary>No probe of the cluster is nearer than this, mm.</summary>
    public readonly float Lowest(int cluster) => lowest[cluster];

    /// <summary>The nearest probe of a cluster: its signed distance, mm, and its index.</summary>
    public readonly (float Distance, int Probe) Nearest(int cluster)
    {
        var centre = new Vec3(probes.CentreX[cluster], probes.CentreY[cluster], probes.CentreZ[cluster]);
        return Nearest(probes, cluster, pose, other.Near(pose.Point(centre), probes.Radius[cluster]));
    }

    /// <summary>The same for one cluster in a pose of its own.</summary>
    /// <param name="probes">The probes.</param>
    /// <param name="cluster">Which cluster.</param>
    /// <param name="pose">From their frame to the solid's.</param>
    /// <param name="near">The solid near the cluster.</param>
    public static (float Distance, int Probe) Nearest(ProbeSurface probes, int cluster, Pose pose, Solid near)
    {
        const int Size = ProbeSurface.ClusterSize;
        var begin = cluster * Size;
        var arena = Scratch.Arena;
        var mark = arena.Mark;
        Span<float> px = arena.Take(Size), py = arena.Take(Size), pz = arena.Take(Size), d = arena.Take(Size);
        Place(pose, probes.X.AsSpan(begin, Size), probes.Y.AsSpan(begin, Size), probes.Z.AsSpan(begin, Size), px, py, pz);
        near.Distances(px, py, pz, d, arena);
        var best = 0;
        for (var i = 1; i < Size; i++)
        {
            best = d[i] < d[best] ? i : best;
        }

        var nearest = d[best];
        arena.Release(mark);
        return (nearest, begin + best);
    }

    private static void Place(
        Pose pose, ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> toX, Span<float> toY, Span<float> toZ)
    {
        Vec3 u = pose.AxisX, v = pose.AxisY, w = pose.AxisZ, o = pose.Origin;
        float ux = (float)u.X, uy = (float)u.Y, uz = (float)u.Z, vx = (float)v.X, vy = (float)v.Y, vz = (float)v.Z;
        float wx = (float)w.X, wy = (float)w.Y, wz = (float)w.Z, ox = (float)o.X, oy = (float)o.Y, oz = (float)o.Z;
        for (var i = 0; i < x.Length; i++)
        {
            float a = x[i], b = y[i], c = z[i];
            toX[i] = a * ux + b * vx + c * wx + ox;
            toY[i] = a * uy + b * vy + c * wy + oy;
            toZ[i] = a * uz + b * vz + c * wz + oz;
        }
    }
}
