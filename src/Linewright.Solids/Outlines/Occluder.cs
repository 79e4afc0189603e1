using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>Says which parts of a straight piece stand behind a triangle: exact, by the triangles themselves and not by pixels.</summary>
/// <remarks>Triangles lie in a grid over the view; a piece only meets those in the cells that it runs through.</remarks>
internal sealed class Occluder
{
    // A triangle seen on its edge hides nothing; its neighbours do. mm2.
    private const double LeastArea = 1e-12;

    // Triangles reach over their sides by so much, so that nothing shows through between two. mm.
    private const double GrownMm = 1e-6;

    // What a triangle must be nearer by to hide. mm.
    private const double NearerMm = 1e-6;

    private readonly List<Blind> blinds = [];
    private readonly int[] starts;
    private readonly int[] cells;
    private readonly int columns;
    private readonly int rows;
    private readonly double left;
    private readonly double low;
    private readonly double cell;
    private readonly double cutDepth;
    private readonly int[] seen;
    private int turn;

    /// <summary>Sorts all triangles that can hide something.</summary>
    /// <param name="bodies">All bodies of the view.</param>
    /// <param name="frame">The view.</param>
    /// <param name="cutDepth">Nothing nearer than this hides; where it is finite faces turned away hide too, for the eye looks into bodies that are cut open.</param>
    public Occluder(IReadOnlyList<PlacedBody> bodies, ViewFrame frame, double cutDepth)
    {
        this.cutDepth = cutDepth;
        var isCut = double.IsFinite(cutDepth);
        double right = double.NegativeInfinity, high = double.NegativeInfinity;
        (left, low) = (double.PositiveInfinity, double.PositiveInfinity);
        foreach (var (body, pose, _, _) in bodies)
        {
            for (var i = 0; i < body.Corners.Length; i += 3)
            {
                Vec3 a = pose.Point(body.Corners[i]), b = pose.Point(body.Corners[i + 1]), c = pose.Point(body.Corners[i + 2]);
                var blind = new Blind(frame.Flat(a), frame.Flat(b), frame.Flat(c), frame.Depth(a), frame.Depth(b), frame.Depth(c));
                var area = (blind.B - blind.A).Cross(blind.C - blind.A);
                area = pose.IsMirrored ? -area : area;
                if (Math.Abs(area) < LeastArea || (!isCut && area < 0) || Math.Min(blind.DepthA, Math.Min(blind.DepthB, blind.DepthC)) > cutDepth)
                {
                    continue;
                }

                blinds.Add(area > 0 != pose.IsMirrored ? blind : blind.Turned());
                (left, low) = (Math.Min(left, blind.Left), Math.Min(low, blind.Low));
                (right, high) = (Math.Max(right, blind.Right), Math.Max(high, blind.High));
            }
        }

        // About as many cells as triangles, and no row or column without end.
        double width = Math.Max(right - left, 1e-3), height = Math.Max(high - low, 1e-3);
        cell = Math.Max(Math.Sqrt(width * height / Math.Max(1, blinds.Count)), Math.Max(width, height) / 1000);
        columns = blinds.Count == 0 ? 0 : (int)(width / cell) + 1;
        rows = blinds.Count == 0 ? 0 : (int)(height / cell) + 1;

        // Count, then fill: one list of all cells, one after the other.
        starts = new int[columns * rows + 1];
        ForCells((at, _) => starts[at + 1]++);
        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        cells = new int[starts[^1]];
        var filled = starts.ToArray();
        ForCells((at, index) => cells[filled[at]++] = index);
        seen = new int[blinds.Count];
    }

    /// <summary>The hidden parts of a piece, as shares of its length, in no order and overlapping.</summary>
    /// <param name="from">Where it starts, on the paper.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="fromDepth">Depth of its start.</param>
    /// <param name="toDepth">Depth of its end.</param>
    /// <param name="hidden">Filled.</param>
    public void Hide(FlatPoint from, FlatPoint to, double fromDepth, double toDepth, List<(double From, double To)> hidden)
    {
        hidden.Clear();
        turn++;
        if (blinds.Count == 0)
        {
            return;
        }

        int firstColumn = Column(Math.Min(from.X, to.X)), lastColumn = Column(Math.Max(from.X, to.X));
        int firstRow = Row(Math.Min(from.Y, to.Y)), lastRow = Row(Math.Max(from.Y, to.Y));
        for (var row = firstRow; row <= lastRow; row++)
        {
            for (var column = firstColumn; column <= lastColumn; column++)
            {
                var at = row * columns + column;
                for (var i = starts[at]; i < starts[at + 1]; i++)
                {
                    var index = cells[i];
                    if (seen[index] != turn)
                    {
                        seen[index] = turn;
                        if (blinds[index].Hides(from, to, fromDepth, toDepth, cutDepth) is { } part)
                        {
                            hidden.Add(part);
                        }
                    }
                }
            }
        }
    }

    /// <summary>Sorts parts and joins those that meet, as neighbouring triangles do but for rounding.</summary>
    public static void Join(List<(double From, double To)> parts)
    {
        const double crack = 1e-6;
        parts.Sort();
        var kept = 0;
        for (var i = 0; i < parts.Count; i++)
        {
            if (kept > 0 && parts[i].From <= parts[kept - 1].To + crack)
            {
                parts[kept - 1] = (parts[kept - 1].From, Math.Max(parts[kept - 1].To, parts[i].To));
            }
            else
            {
                parts[kept++] = parts[i];
            }
        }

        parts.RemoveRange(kept, parts.Count - kept);
    }

    private void ForCells(Action<int, int> visit)
    {
        for (var index = 0; index < blinds.Count; index++)
        {
            var blind = blinds[index];
            for (var row = Row(blind.Low); row <= Row(blind.High); row++)
            {
                for (var column = Column(blind.Left); column <= Column(blind.Right); column++)
                {
                    visit(row * columns + column, index);
                }
            }
        }
    }

    private int Column(double x) => Math.Clamp((int)((x - left) / cell), 0, columns - 1);

    private int Row(double y) => Math.Clamp((int)((y - low) / cell), 0, rows - 1);

    /// <summary>A triangle on the paper, counter-clockwise, with the depth of its corners.</summary>
    private readonly record struct Blind(FlatPoint A, FlatPoint B, FlatPoint C, double DepthA, double DepthB, double DepthC)
    {
        public double Left => Math.Min(A.X, Math.Min(B.X, C.X));

        public double Right => Math.Max(A.X, Math.Max(B.X, C.X));

        public double Low => Math.Min(A.Y, Math.Min(B.Y, C.Y));

        public double High => Math.Max(A.Y, Math.Max(B.Y, C.Y));

        public Blind Turned() => new(A, C, B, DepthA, DepthC, DepthB);

        public (double From, double To)? Hides(FlatPoint from, FlatPoint to, double fromDepth, double toDepth, double cutDepth)
        {
            // On the paper: cut the piece by the three sides. Each side's value is linear along the piece.
            double start = 0, end = 1;
            if (!CutBySide(A, B, from, to, ref start, ref end) || !CutBySide(B, C, from, to, ref start, ref end) || !CutBySide(C, A, from, to, ref start, ref end))
            {
                return null;
            }

            // In depth: nearer than the piece, and not taken away by the section. A sliver seen almost on its edge would reach
            // far towards the eye on the strip that it was grown by: no place of a triangle is nearer than its nearest corner.
            double atFrom = DepthOver(from), atTo = DepthOver(to), nearest = Math.Max(DepthA, Math.Max(DepthB, DepthC));
            return Cut(nearest - fromDepth, nearest - toDepth, ref start, ref end)
                && Cut(atFrom - fromDepth - NearerMm, atTo - toDepth - NearerMm, ref start, ref end)
                && (double.IsPositiveInfinity(cutDepth) || Cut(cutDepth - atFrom, cutDepth - atTo, ref start, ref end))
                ? (start, end)
                : null;
        }

        // A piece that runs along a side lies within both triangles that meet there.
        private static bool CutBySide(FlatPoint a, FlatPoint b, FlatPoint from, FlatPoint to, ref double start, ref double end)
        {
            var along = b - a;
            var grown = GrownMm * along.Length;
            return Cut(along.Cross(from - a) + grown, along.Cross(to - a) + grown, ref start, ref end);
        }

        private double DepthOver(FlatPoint p)
        {
            var area = (B - A).Cross(C - A);
            double shareB = (p - A).Cross(C - A) / area, shareC = (B - A).Cross(p - A) / area;
            return DepthA + (DepthB - DepthA) * shareB + (DepthC - DepthA) * shareC;
        }

        /// <summary>Keeps the part where a value that runs from one number to another is above zero.</summary>
        private static bool Cut(double atStart, double atEnd, ref double start, ref double end)
        {
            if (atStart <= 0 && atEnd <= 0)
            {
                return false;
            }

            if (atStart < 0)
            {
                start = Math.Max(start, atStart / (atStart - atEnd));
            }
            else if (atEnd < 0)
            {
                end = Math.Min(end, atStart / (atStart - atEnd));
            }

            return start < end;
        }
    }
}
