using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>Steps of given straight length along a polyline in the xy plane.</summary>
internal sealed class PathWalk(IReadOnlyList<Vec3> path)
{
    private int segment;
    private double share;

    /// <summary>Where it stands, z = 0.</summary>
    public Vec3 At { get; private set; } = path[0] with { Z = 0 };

    /// <summary>Goes to the first place ahead that is a straight distance away; false where the path ends before.</summary>
    public bool Step(double distance)
    {
        for (; segment < path.Count - 1; segment++, share = 0)
        {
            Vec3 a = path[segment] with { Z = 0 }, b = path[segment + 1] with { Z = 0 };
            if ((b - At).Length < distance)
            {
                continue;
            }

            // |a + t (b - a) - At| = distance: the larger root is the way out of the circle.
            Vec3 along = b - a, from = a - At;
            double square = along.Dot(along), half = along.Dot(from), rest = from.Dot(from) - distance * distance;
            var t = (-half + Math.Sqrt(Math.Max(0, half * half - square * rest))) / square;
            share = Math.Clamp(t, share, 1);
            At = a + along * share;
            return true;
        }

        return false;
    }
}
