using Linewright.Checks;

namespace Linewright.Tolerance;

/// <summary>Draws a lot of pieces and keeps of each what the study counts. Pieces are drawn side by side; each has random numbers of its own.</summary>
internal sealed class LotDraw
{
    // Streams of random numbers: the line, its joints' sides, its clasp, and from here on a stream a wall.
    private const int LineStream = 0, SideStream = 1, ClaspStream = 2, WallStream = 16;

    // Enough pieces a turn that handing out work costs nothing.
    private const int Batch = 64;

    // A wall so many deviations over its limit is never under it: 6.3 is the furthest that is ever drawn.
    private const double SafeDeviations = 7;

    private readonly LineVariation line;
    private readonly Scatter scatter;
    private readonly WallReading[] walls;

    private LotDraw(LineVariation line, int pieces, ulong seed)
    {
        this.line = line;
        scatter = new Scatter(seed);
        walls = [.. line.Walls];
        (Length, ByScale, BySizes, ByFit) = (new double[pieces], new double[pieces], new double[pieces], new double[pieces]);
        (LeastBore, LeastSide, Fates) = (new double[pieces], new double[pieces], new PieceFate[pieces]);
        Thinnest = [.. walls.Select(_ => new double[pieces])];
        Under = [.. walls.Select(_ => new int[pieces])];
    }

    /// <summary>Closed length of each piece, mm.</summary>
    public double[] Length { get; }

    /// <summary>What the trees' scale adds to each length, mm.</summary>
    public double[] ByScale { get; }

    /// <summary>What the castings' sizes add to each length, mm.</summary>
    public double[] BySizes { get; }

    /// <summary>What the joints' fit adds to each length, mm.</summary>
    public double[] ByFit { get; }

    /// <summary>Of each piece the joint that came out tightest, less the nominal clearance, mm.</summary>
    public double[] LeastBore { get; }

    /// <summary>The same between the cheeks.</summary>
    public double[] LeastSide { get; }

    /// <summary>What became of each piece.</summary>
    public PieceFate[] Fates { get; }

    /// <summary>Of each wall, each piece's thinnest, mm; endless where the wall is never in danger.</summary>
    public double[][] Thinnest { get; }

    /// <summary>Of each wall, how many in each piece are under the limit.</summary>
    public int[][] Under { get; }

    /// <summary>Draws the lot on all processors.</summary>
    public static LotDraw Of(LineVariation line, int pieces, ulong seed, CancellationToken stop)
    {
        var lot = new LotDraw(line, pieces, seed);
        Parallel.For(0, (pieces + Batch - 1) / Batch, new ParallelOptions { CancellationToken = stop }, () => new double[lot.Room()], (batch, _, room) =>
        {
            for (var piece = batch * Batch; piece < Math.Min(pieces, (batch + 1) * Batch); piece++)
            {
                lot.Draw(piece, room);
            }

            return room;
        }, _ => { });
        return lot;
    }

    private int Room() => Math.Max(2 * line.Trees + line.Links + line.Joints + 2, walls.Length == 0 ? 0 : walls.Max(wall => wall.Count)) + 2 * line.Trees;

    private void Draw(int piece, double[] room)
    {
        var trees = 2 * line.Trees;
        var shared = room.AsSpan(0, trees);
        var fate = Line(piece, room.AsSpan(trees), shared)
            | Sides(piece, room.AsSpan(trees, line.Joints), shared)
            | Clasp(piece, room.AsSpan(trees, 6), shared);
        Fates[piece] = fate | Walls(piece, room.AsSpan(trees), shared);
    }

    // Scales of the trees first, their faces after them; both are kept for what follows.
    private PieceFate Line(int piece, Span<double> own, Span<double> shared)
    {
        var (trees, links, joints) = (line.Trees, line.Links, line.Joints);
        var all = own[..(2 * trees + links + 2 + joints)];
        scatter.Fill(piece, LineStream, all);
        all[..(2 * trees)].CopyTo(shared);
        var sizes = all.Slice(2 * trees, links);
        var clasp = all.Slice(2 * trees + links, 2);
        var fits = all[(2 * trees + links + 2)..];

        double scale = 0, size = 0, fit = 0, tightest = double.PositiveInfinity;
        for (var link = 0; link < links; link++)
        {
            scale += line.LinkMm * shared[line.TreeOf(link)];
            size += sizes[link];
        }

        scale += (line.BoxMm + line.TongueMm) * shared[trees - 1];
        foreach (var deviation in fits)
        {
            fit += deviation;
            tightest = Math.Min(tightest, deviation);
        }

        ByScale[piece] = line.ScaleSpread * scale;
        BySizes[piece] = line.CentresSpreadMm * size + line.CentreToFaceSpreadMm * (clasp[0] + clasp[1]);
        ByFit[piece] = line.Joint.BoreMm * fit / 2;
        Length[piece] = line.LaidFlatMm + ByScale[piece] + BySizes[piece] + ByFit[piece];
        LeastBore[piece] = line.Joint.BoreMm * tightest;
        return line.BoreMm + LeastBore[piece] >= JointSpread.LeastClearanceMm ? PieceFate.Bores : PieceFate.None;
    }

    // A joint is between two castings: half of what the trees share comes from each.
    private PieceFate Sides(int piece, Span<double> own, ReadOnlySpan<double> shared)
    {
        var (trees, links) = (line.Trees, line.Links);
        scatter.Fill(piece, SideStream, own);
        double least = double.PositiveInfinity, withoutFaces = double.PositiveInfinity, withoutSizes = double.PositiveInfinity;
        for (var joint = 0; joint < own.Length; joint++)
        {
            var eye = joint == 0 ? trees - 1 : line.TreeOf(joint - 1);
            var cheeks = joint == links ? trees - 1 : line.TreeOf(joint);
            var alone = line.Joint.SideMm * own[joint];
            var together = -line.Joint.SideSharedMm * (shared[trees + eye] + shared[trees + cheeks]) / 2;
            least = Math.Min(least, alone + together);
            withoutFaces = Math.Min(withoutFaces, alone);
            withoutSizes = Math.Min(withoutSizes, together);
        }

        LeastSide[piece] = least;
        return When(least, PieceFate.Sides) | When(withoutFaces, PieceFate.SidesWithoutFaces) | When(withoutSizes, PieceFate.SidesWithoutSizes);

        PieceFate When(double deviation, PieceFate fate) => line.SideMm + deviation >= JointSpread.LeastClearanceMm ? fate : PieceFate.None;
    }

    private PieceFate Clasp(int piece, Span<double> own, ReadOnlySpan<double> shared)
    {
        scatter.Fill(piece, ClaspStream, own);
        var clasp = line.Clasp;
        var filed = clasp.FiledShare * line.SizeSpreadMm;
        var faces = -2 * clasp.FiledShare * line.FacesSpreadMm * shared[^1];
        double width = filed * own[0], lip = filed * own[1];
        double strip = clasp.StripSpreadMm * own[2], across = clasp.StripSpreadMm * own[3], fold = clasp.BendSpreadMm * own[4], leaf = clasp.BendSpreadMm * own[5];
        var (closes, holds) = Works(width + faces, lip + faces, strip, across, fold, leaf);
        var fate = (closes ? PieceFate.Closes : PieceFate.None) | (holds ? PieceFate.Holds : PieceFate.None);
        return fate
            | Both(Works(width, lip, strip, across, fold, leaf), PieceFate.ClaspWithoutFaces)
            | Both(Works(faces, faces, strip, across, fold, leaf), PieceFate.ClaspWithoutSizes)
            | Both(Works(width + faces, lip + faces, 0, 0, 0, 0), PieceFate.ClaspWithoutStrip);

        static PieceFate Both((bool Closes, bool Holds) works, PieceFate fate) => works is { Closes: true, Holds: true } ? fate : PieceFate.None;

        // The strip lies twice in the box; a lip that stands higher holds less.
        (bool Closes, bool Holds) Works(double box, double underLip, double thick, double wide, double folded, double set)
        {
            var overlap = clasp.OverlapMm + 2 * thick + set - underLip;
            var release = clasp.ReleaseMm + clasp.OverlapMm - overlap;
            var slides = clasp.SideMm + box - wide >= 2 * clasp.LeastGapMm
                && clasp.FoldMm + underLip - 2 * thick - folded >= 2 * clasp.LeastGapMm
                && release >= clasp.LeastGapMm;
            return (slides, overlap >= clasp.LeastOverlapMm);
        }
    }

    private PieceFate Walls(int piece, Span<double> room, ReadOnlySpan<double> shared)
    {
        var trees = line.Trees;
        bool holds = true, accepted = true;
        for (var i = 0; i < walls.Length; i++)
        {
            var wall = walls[i];
            var spread = line.WallSpreadMm(wall);
            var together = line.WallScatter.SharedMm(wall);
            var thinnest = double.PositiveInfinity;
            if (wall.ThicknessMm - wall.LimitMm < SafeDeviations * (spread + together + wall.ThicknessMm * line.ScaleSpread))
            {
                var own = room[..wall.Count];
                scatter.Fill(piece, WallStream + i, own);
                var under = 0;
                for (var k = 0; k < own.Length; k++)
                {
                    var tree = wall.Count == line.Links ? line.TreeOf(k) : trees - 1;
                    var scale = wall.IsRolled ? 0 : line.ScaleSpread * shared[tree];
                    var thick = wall.ThicknessMm * (1 + scale) + spread * own[k] + together * shared[trees + tree];
                    thinnest = Math.Min(thinnest, thick);
                    under += thick < wall.LimitMm ? 1 : 0;
                }

                Under[i][piece] = under;
                holds &= under == 0;
                accepted &= thinnest >= wall.LimitMm - line.ShortfallMm;
            }

            Thinnest[i][piece] = thinnest;
        }

        return (holds ? PieceFate.Walls : PieceFate.None) | (accepted ? PieceFate.Accepted : PieceFate.None);
    }
}
