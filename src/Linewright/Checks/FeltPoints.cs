using Linewright.Solids.Lanes;
using Linewright.Solids.Measures;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Points of one part's surface, felt all at once by another part in one pose after the other. Not for several threads.</summary>
internal sealed class FeltPoints
{
    private readonly Arena arena = new();
    private readonly Vec3[] points;
    private readonly float[] x, y, z, distance;

    /// <summary>The probes of a surface for which a condition holds.</summary>
    public FeltPoints(ProbeSurface probes, Func<Vec3, bool> isLooked)
    {
        points = [.. Enumerable.Range(0, probes.Count).Select(probes.Point).Where(isLooked)];
        var padded = (points.Length + Solid.BatchStep - 1) / Solid.BatchStep * Solid.BatchStep;
        (x, y, z, distance) = (new float[padded], new float[padded], new float[padded], new float[padded]);
    }

    /// <summary>The least distance of any point, mm, and that point in its own frame; endless where there is none.</summary>
    /// <param name="other">The part that feels.</param>
    /// <param name="into">From the points' frame to its own.</param>
    public (double Gap, Vec3 At) Nearest(Solid other, Pose into)
    {
        for (var i = 0; i < x.Length; i++)
        {
            var p = into.Point(points[Math.Min(i, points.Length - 1)]);
            (x[i], y[i], z[i]) = ((float)p.X, (float)p.Y, (float)p.Z);
        }

        other.Distances(x, y, z, distance, arena);
        var least = (Gap: double.PositiveInfinity, At: Vec3.Zero);
        for (var i = 0; i < points.Length; i++)
        {
            least = distance[i] < least.Gap ? (distance[i], points[i]) : least;
        }

        return least;
    }
}
