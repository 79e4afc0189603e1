using Linewright.Checks;
using Linewright.Solids.Measures;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>The largest ball that fits into a part: what freezes last, and so what a sprue must feed.</summary>
/// <remarks>
/// Looked for on a grid by the signed distance, which understates where solids were united, and then measured at the best places by
/// straight lines in 26 directions, the shortest of which overstates a little: the feed comes out a little thick, never thin.
/// </remarks>
internal static class ThickestSection
{
    private const double StepMm = 0.25;
    private const int MostPlaces = 6;

    /// <summary>Diameter and middle of the ball, mm.</summary>
    public static (double DiameterMm, Vec3 At) Of(Solid solid)
    {
        var box = solid.Bounds;
        var grid = new List<Vec3>();
        for (var x = box.Low.X + StepMm / 2; x < box.High.X; x += StepMm)
        {
            for (var y = box.Low.Y + StepMm / 2; y < box.High.Y; y += StepMm)
            {
                for (var z = box.Low.Z + StepMm / 2; z < box.High.Z; z += StepMm)
                {
                    grid.Add(new Vec3(x, y, z));
                }
            }
        }

        var distances = ManyDistances.Of(solid, grid);
        var places = grid.Select((at, index) => (Depth: -distances[index], At: at)).Where(place => place.Depth > 0);
        var (most, where) = (0.0, box.Centre);
        foreach (var (_, at) in places.OrderByDescending(place => place.Depth).Take(MostPlaces))
        {
            var deep = Deepest(solid, at);
            var radius = Directions().Min(way => Caliper.ToSurface(solid, deep, way));
            (most, where) = radius > most ? (radius, deep) : (most, where);
        }

        return (2 * most, where);
    }

    // From a point of the grid to the deepest place near it, by ever shorter steps along the axes.
    private static Vec3 Deepest(Solid solid, Vec3 at)
    {
        var depth = solid.Distance(at);
        for (var step = StepMm / 2; step > 0.01;)
        {
            var moved = false;
            foreach (var way in (Vec3[])[Vec3.UnitX, -Vec3.UnitX, Vec3.UnitY, -Vec3.UnitY, Vec3.UnitZ, -Vec3.UnitZ])
            {
                var there = solid.Distance(at + way * step);
                if (there < depth - 1e-6)
                {
                    (at, depth, moved) = (at + way * step, there, true);
                }
            }

            step = moved ? step : step / 2;
        }

        return at;
    }

    private static IEnumerable<Vec3> Directions()
    {
        for (var x = -1; x <= 1; x++)
        {
            for (var y = -1; y <= 1; y++)
            {
                for (var z = -1; z <= 1; z++)
                {
                    if (x != 0 || y != 0 || z != 0)
                    {
                        yield return new Vec3(x, y, z);
                    }
                }
            }
        }
    }
}
