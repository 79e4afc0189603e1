using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>A box that stands askew: what a part on a tree keeps clear.</summary>
internal readonly struct TiltedBox
{
    private readonly Pose frame;
    private readonly Vec3 centre, half;

    /// <summary>A box in a frame.</summary>
    public TiltedBox(Bounds box, Pose frame)
    {
        this.frame = frame;
        centre = frame.Point(box.Centre);
        half = box.Size * 0.5;
    }

    /// <summary>Lowest point over z = 0.</summary>
    public double LowestZ => centre.Z - Reach(Vec3.UnitZ);

    /// <summary>Highest point over z = 0.</summary>
    public double HighestZ => centre.Z + Reach(Vec3.UnitZ);

    /// <summary>Furthest corner from the z axis.</summary>
    public double FurthestFromAxis
    {
        get
        {
            var most = 0.0;
            for (var corner = 0; corner < 8; corner++)
            {
                var p = centre + frame.AxisX * ((corner & 1) == 0 ? half.X : -half.X) + frame.AxisY * ((corner & 2) == 0 ? half.Y : -half.Y)
                    + frame.AxisZ * ((corner & 4) == 0 ? half.Z : -half.Z);
                most = Math.Max(most, Math.Sqrt(p.X * p.X + p.Y * p.Y));
            }

            return most;
        }
    }

    /// <summary>A gap that the two certainly keep; 0 or less where they may touch.</summary>
    /// <remarks>
    /// Two boxes are apart exactly where their shadows are on one of fifteen lines: the edges of both and the normals of pairs of them.
    /// Source: Gottschalk, Lin and Manocha (1996), OBBTree, SIGGRAPH.
    /// </remarks>
    public static double Gap(in TiltedBox a, in TiltedBox b)
    {
        var between = b.centre - a.centre;
        var gap = double.NegativeInfinity;
        ReadOnlySpan<Vec3> own = [a.frame.AxisX, a.frame.AxisY, a.frame.AxisZ], other = [b.frame.AxisX, b.frame.AxisY, b.frame.AxisZ];
        foreach (var axis in own)
        {
            gap = Math.Max(gap, Apart(a, b, between, axis));
        }

        foreach (var axis in other)
        {
            gap = Math.Max(gap, Apart(a, b, between, axis));
        }

        foreach (var first in own)
        {
            foreach (var second in other)
            {
                var axis = first.Cross(second);
                if (axis.Length > 1e-6)
                {
                    gap = Math.Max(gap, Apart(a, b, between, axis.Normalised()));
                }
            }
        }

        return gap;
    }

    private static double Apart(in TiltedBox a, in TiltedBox b, Vec3 between, Vec3 axis) => Math.Abs(between.Dot(axis)) - a.Reach(axis) - b.Reach(axis);

    private double Reach(Vec3 axis)
        => half.X * Math.Abs(frame.AxisX.Dot(axis)) + half.Y * Math.Abs(frame.AxisY.Dot(axis)) + half.Z * Math.Abs(frame.AxisZ.Dot(axis));
}
