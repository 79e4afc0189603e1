using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;

namespace Linewright.Stones;

/// <summary>Cuts a round brilliant: 57 facets, 58 with a culet, and a girdle of many flats.</summary>
/// <remarks>
/// Construction, calculated: mains pass through the girdle circle at their azimuth; table corners lie on the mains'
/// middle lines; star tips on the edges between two bezel mains; halves are the planes through a main's
/// girdle point, the tip, and the girdle point half-way to the next main.
/// </remarks>
public static class RoundBrilliant
{
    private const int Mains = 8;

    // Azimuth between a main and the tip beside it, and between a main and the middle of its half facet.
    private const double TipTurn = Math.PI / 8;
    private const double HalfTurn = Math.PI / 16;

    // A facet smaller than this share of the diameter squared is not there for an eye or a wheel.
    // Assumed: a 0.001 mm square on a 1 mm stone.
    private const double LeastFacetShare = 1e-6;

    /// <summary>Cuts a stone.</summary>
    /// <param name="diameterMm">Girdle diameter, above zero.</param>
    /// <param name="proportions">What to cut it to; impossible ones come back as a status with the numbers.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not a finite number above zero.</exception>
    public static StoneResult Cut(double diameterMm, BrilliantProportions proportions)
    {
        ArgumentNullException.ThrowIfNull(proportions);
        Guard.Positive(diameterMm);
        if (BrilliantRules.Refusal(proportions) is { } refusal)
        {
            return refusal;
        }

        // Cut at diameter 1 and scale: every size then has the same faces.
        var facets = Facets(proportions);
        var result = ConvexPolyhedron.FromPlanes([.. facets.Select(f => f.Plane)]);
        if (!result.IsSolid)
        {
            return new StoneResult(StoneStatus.FacetLost, null, $"the facet planes leave no closed body ({result.Status})");
        }

        var lost = facets.Count - result.Body.Faces.Count(f => f.Area > LeastFacetShare);
        if (lost > 0)
        {
            return new StoneResult(StoneStatus.FacetLost, null, FormattableString.Invariant($"{lost} of {facets.Count} facets vanish"));
        }

        return new StoneResult(
            StoneStatus.Sound,
            new Stone
            {
                DiameterMm = diameterMm,
                Proportions = proportions,
                Body = result.Body.Scaled(diameterMm),
                FacetKinds = [.. result.Body.Faces.Select(f => facets[f.PlaneIndex].Kind)],
                Outline = new CircleOutline(diameterMm),
            },
            string.Empty);
    }

    /// <summary>The derived slopes, radians: stars, upper halves, lower halves.</summary>
    internal static (double Star, double UpperHalf, double LowerHalf) Slopes(BrilliantProportions p)
    {
        const double radius = 0.5;
        double crown = Math.Tan(double.DegreesToRadians(p.CrownDeg)), pavilion = Math.Tan(double.DegreesToRadians(p.PavilionDeg));
        double tableCorner = p.TableRatio * radius, starTip = StarTipRadius(p), lowerTip = (1 - p.LowerHalfRatio) * radius;
        return (
            Math.Atan((starTip * Math.Cos(TipTurn) - tableCorner) * crown / (starTip - tableCorner * Math.Cos(TipTurn))),
            Math.Atan((radius - starTip * Math.Cos(TipTurn)) * crown / ((radius - starTip) * Math.Cos(HalfTurn))),
            Math.Atan((radius - lowerTip * Math.Cos(TipTurn)) * pavilion / ((radius - lowerTip) * Math.Cos(HalfTurn))));
    }

    /// <summary>Radius of the star tips for a stone of diameter 1.</summary>
    internal static double StarTipRadius(BrilliantProportions p)
    {
        var tableEdge = p.TableRatio / 2 * Math.Cos(TipTurn);
        return tableEdge + p.StarRatio * (0.5 - tableEdge);
    }

    private static List<(FacetKind Kind, Plane Plane)> Facets(BrilliantProportions p)
    {
        const double radius = 0.5;
        double girdle = p.GirdleRatio / 2, table = girdle + p.CrownHeightRatio;
        double crown = double.DegreesToRadians(p.CrownDeg), pavilion = double.DegreesToRadians(p.PavilionDeg);
        var (star, upperHalf, lowerHalf) = Slopes(p);
        var facets = new List<(FacetKind, Plane)> { (FacetKind.Table, new Plane(Vec3.UnitZ, table)) };
        for (var k = 0; k < Mains; k++)
        {
            var azimuth = k * 2 * TipTurn;
            facets.Add((FacetKind.Star, Plane.Sloped(azimuth + TipTurn, star, At(azimuth + TipTurn, p.TableRatio * radius * Math.Cos(TipTurn), table))));
            facets.Add((FacetKind.BezelMain, Plane.Sloped(azimuth, crown, At(azimuth, radius, girdle))));
            facets.Add((FacetKind.PavilionMain, Plane.Sloped(azimuth, pavilion, At(azimuth, radius, -girdle), down: true)));
            foreach (var middle in (ReadOnlySpan<double>)[azimuth + HalfTurn, azimuth + 3 * HalfTurn])
            {
                var foot = radius * Math.Cos(HalfTurn);
                facets.Add((FacetKind.UpperHalf, Plane.Sloped(middle, upperHalf, At(middle, foot, girdle))));
                facets.Add((FacetKind.LowerHalf, Plane.Sloped(middle, lowerHalf, At(middle, foot, -girdle), down: true)));
            }
        }

        for (var side = 0; side < p.GirdleSides; side++)
        {
            var azimuth = 2 * Math.PI * side / p.GirdleSides;
            facets.Add((FacetKind.Girdle, Plane.Sloped(azimuth, Math.PI / 2, At(azimuth, radius, 0))));
        }

        if (p.CuletRatio > 0)
        {
            facets.Add((FacetKind.Culet, new Plane(-Vec3.UnitZ, girdle + p.PavilionDepthRatio * (1 - p.CuletRatio))));
        }

        // Table first, girdle and culet last, kinds together between them.
        return [.. facets.OrderBy(f => f.Item1)];
    }

    private static Vec3 At(double azimuth, double radius, double height)
        => new(radius * Math.Cos(azimuth), radius * Math.Sin(azimuth), height);
}
