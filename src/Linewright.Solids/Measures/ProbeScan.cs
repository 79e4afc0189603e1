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
    private readonly Solid solid;
    private readonly Pose pose;
    private readonly Arena arena;
    private readonly Span<float> lowest; // per cluster: no probe is nearer than this
    private readonly Span<float> px, py, pz, d;

    /// <summary>Places the probes by a pose from their frame to the solid's; memory comes from the arena, which the caller releases.</summary>
    public ProbeScan(ProbeSurface probes, Pose pose, Solid solid, Arena arena)
    {
        this.probes = probes;
        this.solid = solid;
        this.pose = pose;
        this.arena = arena;
        var padded = probes.CentreX.Length;
        lowest = arena.Take(padded);
        const int Size = ProbeSurface.ClusterSize;
        px = arena.Take(Size);
        py = arena.Take(Size);
        pz = arena.Take(Size);
        d = arena.Take(Size);

        var mark = arena.Mark;
        Span<float> x = arena.Take(padded), y = arena.Take(padded), z = arena.Take(padded);
        Place(probes.CentreX, probes.CentreY, probes.CentreZ, x, y, z);
        solid.Distances(x, y, z, lowest, arena);
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
        const int Size = ProbeSurface.ClusterSize;
        var begin = cluster * Size;
        Place(probes.X.AsSpan(begin, Size), probes.Y.AsSpan(begin, Size), probes.Z.AsSpan(begin, Size), px, py, pz);
        solid.Distances(px, py, pz, d, arena);
        var best = 0;
        for (var i = 1; i < Size; i++)
        {
            best = d[i] < d[best] ? i : best;
        }

        return (d[best], begin + best);
    }

    private readonly void Place(
        ReadOnlySpan<float> x, ReadOnlySpan<float> y, ReadOnlySpan<float> z, Span<float> toX, Span<float> toY, Span<float> toZ)
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
