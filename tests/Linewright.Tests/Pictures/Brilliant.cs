using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Tests.Pictures;

/// <summary>A round brilliant of girdle radius 1 from free proportions, crowns of next to nothing included, which no cutter would take on.</summary>
internal static class Brilliant
{
    private const double GirdleHalf = 0.03;
    private const double Star = 0.5;
    private const double LowerHalf = 0.75;
    private const int GirdleFacets = 64;

    /// <summary>Cuts it: 57 facets and the girdle's.</summary>
    public static ConvexPolyhedron Of(double tablePercent, double crownDeg, double pavilionDeg)
    {
        double crown = double.DegreesToRadians(crownDeg), pavilion = double.DegreesToRadians(pavilionDeg), table = tablePercent / 100;
        var top = GirdleHalf + (1 - table) * Math.Tan(crown);
        var apothem = Math.Cos(Math.PI / 8);
        double inner = table * apothem, star = inner + Star * (1 - inner), starHeight = GirdleHalf + (1 - star * apothem) * Math.Tan(crown);
        double lower = 1 - LowerHalf, lowerHeight = -GirdleHalf - (1 - lower * apothem) * Math.Tan(pavilion);
        List<Plane> planes = [new(Vec3.UnitZ, top)];
        for (var k = 0; k < 8; k++)
        {
            double a = k * Math.PI / 4, b = a + Math.PI / 8, next = a + Math.PI / 4;
            planes.Add(Sloped(a, Math.Cos(crown), Math.Sin(crown), At(1, a, GirdleHalf)));
            var rise = Math.Atan2(top - starHeight, star - inner);
            planes.Add(Sloped(b, Math.Cos(rise), Math.Sin(rise), At(inner, b, top)));
            planes.Add(Through(At(star, b, starHeight), At(1, a, GirdleHalf), At(1, b, GirdleHalf)));
            planes.Add(Through(At(star, b, starHeight), At(1, b, GirdleHalf), At(1, next, GirdleHalf)));
            planes.Add(Sloped(a, -Math.Cos(pavilion), Math.Sin(pavilion), At(1, a, -GirdleHalf)));
            planes.Add(Through(At(lower, b, lowerHeight), At(1, a, -GirdleHalf), At(1, b, -GirdleHalf)));
            planes.Add(Through(At(lower, b, lowerHeight), At(1, b, -GirdleHalf), At(1, next, -GirdleHalf)));
        }

        for (var k = 0; k < GirdleFacets; k++)
        {
            var a = (k + 0.5) * 2 * Math.PI / GirdleFacets;
            planes.Add(new Plane(At(1, a, 0), Math.Cos(Math.PI / GirdleFacets)));
        }

        return ConvexPolyhedron.FromPlanes(planes).Body ?? throw new InvalidOperationException("the planes enclose nothing");
    }

    private static Vec3 At(double radius, double angle, double z) => new(radius * Math.Cos(angle), radius * Math.Sin(angle), z);

    private static Plane Sloped(double angle, double up, double outwards, Vec3 p)
    {
        var normal = At(outwards, angle, up).Normalised();
        return new Plane(normal, normal.Dot(p));
    }

    private static Plane Through(Vec3 a, Vec3 b, Vec3 c)
    {
        var normal = (b - a).Cross(c - a).Normalised();
        return normal.Dot(a) < 0 ? new Plane(-normal, -normal.Dot(a)) : new Plane(normal, normal.Dot(a));
    }
}
