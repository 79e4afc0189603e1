using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>Measures along straight lines on a solid, as a caliper's jaws or points would. mm, to about a micrometre.</summary>
internal static class Caliper
{
    // A distance at an edge is understated: never step shorter than this. Thinner slots and webs may be missed.
    private const double LeastStepMm = 0.002;
    private const double SettledMm = 1e-6;

    /// <summary>How far along a line the surface is, endless where there is none within reach.</summary>
    /// <param name="solid">The body.</param>
    /// <param name="from">Inside or outside; not on the surface.</param>
    /// <param name="direction">Any length but zero.</param>
    /// <param name="reach">How far to look.</param>
    public static double ToSurface(Solid solid, Vec3 from, Vec3 direction, double reach = 30)
    {
        var unit = direction.Normalised();
        var start = solid.Distance(from);
        var isInside = start < 0;
        double at = 0, before = 0, distance = start;
        while (distance < 0 == isInside)
        {
            if (at >= reach)
            {
                return double.PositiveInfinity;
            }

            before = at;
            at += Math.Max(Math.Abs(distance), LeastStepMm);
            distance = solid.Distance(from + unit * at);
        }

        while (at - before > SettledMm)
        {
            var middle = (before + at) / 2;
            (before, at) = solid.Distance(from + unit * middle) < 0 == isInside ? (middle, at) : (before, middle);
        }

        return at;
    }

    /// <summary>Width of what a point lies in, metal or gap, along a line both ways.</summary>
    public static double Across(Solid solid, Vec3 through, Vec3 direction, double reach = 30)
        => ToSurface(solid, through, direction, reach) + ToSurface(solid, through, -direction, reach);

    /// <summary>Thickness of a sheet squarely to its face, from a point inside it.</summary>
    public static double Thickness(Solid solid, Vec3 inside) => Across(solid, inside, solid.Sense(inside).Gradient);
}
