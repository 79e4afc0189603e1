using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>Looks for the place of a sprue: meeting as much face as the feed wants, on polished face only, over thick metal.</summary>
/// <remarks>
/// The part as cast is looked at from five sides (on the sixth stands the stone) along rays a fifth of a millimetre apart. A gate is a disc
/// of rays that keeps a distance from every face that must stay as it is and from whatever stands higher; it may overhang an edge,
/// but what it meets must be polished face of about one height. The disc that meets the most face wins, up to what the feed wants,
/// then the one with the most metal behind it, then the one nearest to the part's middle.
/// </remarks>
internal sealed class SprueSearch
{
    // Rays apart; what a gate meets may lie so much higher or lower; so far below an overhang nothing is hidden.
    private const double StepMm = 0.2, LevelMm = 0.35, FarBelowMm = 0.7;

    // A gate keeps so far from a kept face; less contact than this is none; so much of a gate must meet the part.
    private const double AroundMm = 0.3, LeastContactMm = 0.5, LeastShare = 0.6;

    // So much of a sprue may run along its own part; the rest stands clear of it, for the stem and for the saw. Assumed.
    private const double OutsideShare = 0.5;

    // How far round an edge is looked: just round it, and past its rounding.
    private static readonly double[] RoundCornerMm = [0.1, 0.45];

    // The middle may lean by so much: cosine of 30 degrees.
    private const double LeastCosine = 0.866;

    // A contact this much wider or metal this much thicker is better; less is the same.
    private const double SameMm = 0.05;

    private static readonly Vec3[] Sides = [-Vec3.UnitZ, -Vec3.UnitY, Vec3.UnitY, -Vec3.UnitX, Vec3.UnitX];

    private readonly Mesh mesh;
    private readonly FaceMap faces;
    private readonly Vec3 centre;
    private readonly double wantedMm, deepestMm;
    private readonly List<(int I, int J, double Away)> near;

    private SprueSearch(Part part, Mesh asCast, double allowanceMm, double wantedMm, double lengthMm)
    {
        deepestMm = OutsideShare * lengthMm;
        (mesh, faces, centre, this.wantedMm) = (asCast, new FaceMap(part, allowanceMm), asCast.Bounds.Centre, wantedMm);
        near = Offsets(wantedMm / 2 + AroundMm + StepMm);
    }

    /// <summary>The best place, or null where no face will do.</summary>
    /// <param name="part">The part.</param>
    /// <param name="asCast">Its mesh as cast.</param>
    /// <param name="allowanceMm">Of its polished faces.</param>
    /// <param name="wantedMm">Diameter that the feed wants.</param>
    /// <param name="lengthMm">Length of the sprue: its foot must stand outside the part.</param>
    /// <param name="stop">Asks to stop.</param>
    public static SprueSite? Find(Part part, Mesh asCast, double allowanceMm, double wantedMm, double lengthMm, CancellationToken stop)
    {
        var search = new SprueSearch(part, asCast, allowanceMm, wantedMm, lengthMm);
        SprueSite? best = null;
        foreach (var side in Sides)
        {
            stop.ThrowIfCancellationRequested();
            foreach (var site in search.From(side))
            {
                best = best is null || search.IsBetter(site, best) ? site : best;
            }
        }

        return best;
    }

    private bool IsBetter(SprueSite site, SprueSite than)
    {
        if (Math.Abs(site.ContactMm - than.ContactMm) > SameMm)
        {
            return site.ContactMm > than.ContactMm;
        }

        // Metal beyond what the gate itself is wide adds nothing.
        double section = Math.Min(site.SectionMm, wantedMm), behind = Math.Min(than.SectionMm, wantedMm);
        return Math.Abs(section - behind) > SameMm ? section > behind : Off(site) < Off(than) - 1e-6;

        double Off(SprueSite at)
        {
            var off = at.Point - centre;
            return (off - at.Outward * off.Dot(at.Outward)).Length;
        }
    }

    private IEnumerable<SprueSite> From(Vec3 outward)
    {
        var map = DepthMap.Of(mesh, outward, StepMm);
        var hits = new Hit[map.CountU, map.CountV];
        var met = new List<(int I, int J)>();
        for (var i = 0; i < map.CountU; i++)
        {
            for (var j = 0; j < map.CountV; j++)
            {
                if (map.First(i, j, out var point, out var depth, out var square, out var section))
                {
                    hits[i, j] = new Hit(true, false, false, depth, square, section, point);
                    met.Add((i, j));
                }
            }
        }

        var free = faces.AreFree([.. met.Select(at => hits[at.I, at.J].Point)]);
        foreach (var (index, (i, j)) in met.Index())
        {
            hits[i, j] = hits[i, j] with { IsFree = free[index] };
        }

        MarkKeptSides(map, hits, met);
        for (var i = 0; i < map.CountU; i++)
        {
            for (var j = 0; j < map.CountV; j++)
            {
                if (hits[i, j] is { IsFree: true, Square: >= LeastCosine } hit && hit.Depth <= deepestMm && Site(hits, i, j, outward) is { } site)
                {
                    yield return site;
                }
            }
        }
    }

    // A gate may overhang an edge only where the face round the corner may be touched too.
    private void MarkKeptSides(DepthMap map, Hit[,] hits, List<(int I, int J)> met)
    {
        var edges = new List<(int I, int J)>();
        var beside = new List<Vec3>();
        foreach (var (i, j) in met)
        {
            foreach (var (a, b) in ((int, int)[])[(i + 1, j), (i - 1, j), (i, j + 1), (i, j - 1)])
            {
                var isInside = a >= 0 && b >= 0 && a < map.CountU && b < map.CountV;
                if (!isInside || !hits[a, b].IsHit || hits[a, b].Depth > hits[i, j].Depth + LevelMm)
                {
                    foreach (var down in RoundCornerMm)
                    {
                        edges.Add((i, j));
                        beside.Add(map.PointAt(a, b, hits[i, j].Depth + down));
                    }
                }
            }
        }

        var kept = faces.AreBesideKept(beside);
        foreach (var (index, (i, j)) in edges.Index())
        {
            hits[i, j] = hits[i, j] with { HasKeptSide = hits[i, j].HasKeptSide || kept[index] };
        }
    }

    // Rays about a ray, from near to far.
    private static List<(int I, int J, double Away)> Offsets(double reach)
    {
        var most = (int)Math.Ceiling(reach / StepMm);
        var all = new List<(int I, int J, double Away)>();
        for (var i = -most; i <= most; i++)
        {
            for (var j = -most; j <= most; j++)
            {
                all.Add((i, j, StepMm * Math.Sqrt(i * i + j * j)));
            }
        }

        return [.. all.Where(offset => offset.Away <= reach).OrderBy(offset => offset.Away).ThenBy(offset => offset.I).ThenBy(offset => offset.J)];
    }

    /// <summary>The widest gate about one ray.</summary>
    private SprueSite? Site(Hit[,] hits, int i, int j, Vec3 outward)
    {
        var middle = hits[i, j];
        Hit At(int di, int dj)
        {
            var (a, b) = (i + di, j + dj);
            return a >= 0 && b >= 0 && a < hits.GetLength(0) && b < hits.GetLength(1) ? hits[a, b] : default;
        }

        // How wide: up to whatever must stay clear.
        var radius = wantedMm / 2;
        var stands = 0.0;
        foreach (var (di, dj, away) in near)
        {
            if (away > radius + AroundMm)
            {
                break;
            }

            var hit = At(di, dj);
            var below = hit.Depth - middle.Depth;
            if (hit.IsHit && (below < -LevelMm || ((!hit.IsFree || hit.HasKeptSide) && below < FarBelowMm)))
            {
                radius = Math.Min(radius, away - StepMm / 2 - AroundMm);
                stands = Math.Max(stands, -below);
                if (radius < LeastContactMm / 2)
                {
                    return null;
                }
            }
        }

        // How much of it meets the part, and how deep it must go for that.
        int all = 0, met = 0;
        double sink = 0, thinnest = double.PositiveInfinity;
        foreach (var (di, dj, away) in near)
        {
            if (away > radius)
            {
                break;
            }

            var hit = At(di, dj);
            var below = hit.Depth - middle.Depth;
            all++;
            if (hit.IsFree && below <= LevelMm)
            {
                met++;
                sink = Math.Max(sink, below);
                thinnest = Math.Min(thinnest, below + hit.Section);
            }
        }

        // The end of the sprue must lie in metal: not through a thin wall into what is behind it.
        var contact = 2 * radius * Math.Sqrt((double)met / all);
        return contact >= LeastContactMm && met >= LeastShare * all && thinnest > sink + 0.1
            ? new SprueSite(middle.Point, outward, 2 * radius, contact, middle.Section, sink, stands + AroundMm)
            : null;
    }

    /// <param name="IsHit">False where the ray meets nothing.</param>
    /// <param name="IsFree">True on polished face that the bench leaves in its shape.</param>
    /// <param name="HasKeptSide">True on an edge whose other face must stay as it is.</param>
    /// <param name="Depth">From the box's side.</param>
    /// <param name="Square">1 face on.</param>
    /// <param name="Section">Metal behind.</param>
    /// <param name="Point">Where.</param>
    private readonly record struct Hit(bool IsHit, bool IsFree, bool HasKeptSide, double Depth, double Square, double Section, Vec3 Point);
}
