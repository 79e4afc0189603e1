using Linewright.Paper;
using Linewright.Solids.Outlines;

namespace Linewright.Sheets;

/// <summary>A view with its dimensions, leaders and axes, drawn about its own origin at a scale.</summary>
/// <remarks>
/// Dimensions stand in racks beside the view: the shortest nearest, none over another; leaders end in a column of text.
/// Nothing of it depends on where the view comes to lie on the page. Standard: ISO 129-1.
/// </remarks>
internal sealed class DrawnView
{
    // From the outline to the first dimension line, from one to the next, from the outline to an extension line. mm on paper.
    // Standard: ISO 129-1 leaves them open; Common practice: 7 to 10, and not under twice the lettering.
    private const double FirstMm = 7, NextMm = 5.6, GapMm = 0.8, OverMm = 1.5;

    // From line to line in a column of leaders.
    private const double LeaderMm = 4.4;

    private readonly double scale;
    private readonly List<Mark> lines = [];
    private readonly List<Mark> notes = [];
    private readonly List<Span> spans = [];
    private readonly List<(PaperPoint At, string Text, bool IsRight)> leaders = [];
    private PaperBox outline = PaperBox.Empty;

    public DrawnView(SheetScale scale) => this.scale = scale.Factor;

    /// <summary>Which side of the view a rack stands on.</summary>
    public enum Side
    {
        /// <summary>Below: distances to the right.</summary>
        Below,

        /// <summary>Above: distances to the right.</summary>
        Above,

        /// <summary>At the left: heights.</summary>
        Left,

        /// <summary>At the right: heights.</summary>
        Right,
    }

    /// <summary>Takes the lines of a view.</summary>
    /// <param name="view">The view.</param>
    /// <param name="penOf">The pen of each line; null leaves it out.</param>
    public void Add(OutlineView view, Func<OutlineLine, Pen?> penOf)
    {
        foreach (var line in view.Lines)
        {
            if (penOf(line) is { } pen)
            {
                Add(line.Points, pen);
            }
        }
    }

    /// <summary>Takes one line.</summary>
    public void Add(IEnumerable<FlatPoint> points, Pen pen)
    {
        var stroke = new Stroke([.. points.Select(On)], pen);
        lines.Add(stroke);
        outline = outline.Join(stroke.Box);
    }

    /// <summary>Hatches a cut area.</summary>
    /// <remarks>Standard: ISO 128-3 (before 2020: ISO 128-50): at 45 degrees, neighbours the other way round.</remarks>
    public void Hatch(CutArea area, bool isLeaning, double apartMm = 1.4)
    {
        foreach (var (from, to) in Hatching.Lines(area, isLeaning ? 3 * Math.PI / 4 : Math.PI / 4, apartMm / scale))
        {
            lines.Add(new Stroke(On(from), On(to), SheetPens.Facet));
        }
    }

    /// <summary>An axis, drawn past both ends by 2 mm on the paper.</summary>
    public void Axis(FlatPoint from, FlatPoint to)
    {
        PaperPoint a = On(from), b = On(to), along = (b - a) * (2 / (b - a).Length);
        notes.Add(new Stroke(a - along, b + along, SheetPens.Axis));
    }

    /// <summary>The cross of an axis that is seen end on.</summary>
    public void Centre(FlatPoint at, double radius)
    {
        Axis(new FlatPoint(at.X - radius, at.Y), new FlatPoint(at.X + radius, at.Y));
        Axis(new FlatPoint(at.X, at.Y - radius), new FlatPoint(at.X, at.Y + radius));
    }

    /// <summary>The ends of a cutting plane seen on its edge, with arrows in the direction of sight and a letter.</summary>
    public void CuttingPlane(FlatPoint from, FlatPoint to, FlatPoint sight, string letter)
    {
        PaperPoint a = On(from), b = On(to), along = (b - a) * (1 / (b - a).Length), look = new(sight.X, -sight.Y);
        notes.Add(new Stroke(a, b, SheetPens.Axis));
        foreach (var (end, outward) in new[] { (a, along * -1), (b, along) })
        {
            var tip = end + outward * 4;
            notes.Add(new Stroke(end, tip, SheetPens.Plane));
            var foot = tip - outward * 1.5 - look * 4.5;
            var point = tip - outward * 1.5 - look * 0.35;
            notes.Add(new Stroke(foot, point, SheetPens.Narrow));
            notes.Add(Arrows.Head(point, look));
            var letterAt = tip + outward * 2.6;
            notes.Add(new Label(new PaperPoint(letterAt.X, letterAt.Y + SheetPens.Name.CapitalMm / 2), letter, SheetPens.Name, Align.Centre));
        }
    }

    /// <summary>A distance to the right or a height, in a rack at a side.</summary>
    public void Dimension(Side side, FlatPoint from, FlatPoint to, string text) => spans.Add(new Span(side, from, to, text));

    /// <summary>A note with a line to a place, in a column at the right or the left.</summary>
    public void Leader(FlatPoint at, string text, bool isRight = true) => leaders.Add((On(at), text, isRight));

    /// <summary>Lays racks and leaders out and gives the whole, with a name under it.</summary>
    public Block Finish(string name, string? under = null)
    {
        var marks = new List<Mark>();
        marks.AddRange(lines);
        marks.AddRange(notes);
        var box = notes.Aggregate(outline, (all, mark) => all.Join(mark.Box));
        var texts = new List<Label>();
        foreach (var side in (Side[])[Side.Below, Side.Above, Side.Left, Side.Right])
        {
            box = box.Join(Rack(side, box, marks, texts));
        }

        // Leaders go round the racks: their columns stand beside everything else.
        foreach (var isRight in (bool[])[true, false])
        {
            box = box.Join(Column(isRight, box, marks, texts));
        }

        // Lettering lies over lines, on white, so that none runs through it.
        foreach (var text in texts)
        {
            // Less below than above: the dimension's own line runs there.
            var white = text.IsUpward
                ? new PaperBox(text.Box.Left - 0.3, text.Box.Top - 0.4, text.At.X + 0.3, text.Box.Bottom + 0.4)
                : new PaperBox(text.Box.Left - 0.4, text.Box.Top - 0.3, text.Box.Right + 0.4, text.At.Y + 0.3);
            marks.Add(new Area([[new(white.Left, white.Top), new(white.Right, white.Top), new(white.Right, white.Bottom), new(white.Left, white.Bottom)]], 1));
            marks.Add(text);
        }

        var y = box.Bottom + 3.5 + SheetPens.Name.CapitalMm;
        var title = new Label(new PaperPoint(outline.Centre.X, y), name, SheetPens.Name, Align.Centre);
        marks.Add(title);
        box = box.Join(title.Box);
        if (under is not null)
        {
            var second = new Label(new PaperPoint(outline.Centre.X, y + SheetPens.Small.CapitalMm + 2), under, SheetPens.Small, Align.Centre);
            marks.Add(second);
            box = box.Join(second.Box);
        }

        return new Block([.. marks], box);
    }

    private PaperPoint On(FlatPoint p) => new(p.X * scale, -p.Y * scale);

    private PaperBox Rack(Side side, PaperBox box, List<Mark> marks, List<Label> texts)
    {
        // Along runs with the dimension, out away from the view.
        var isHeight = side is Side.Left or Side.Right;
        var outSign = side is Side.Below or Side.Right ? 1 : -1;
        var edge = side switch { Side.Below => box.Bottom, Side.Above => box.Top, Side.Left => box.Left, _ => box.Right };
        PaperPoint Place(double along, double outward) => isHeight ? new PaperPoint(outward, along) : new PaperPoint(along, outward);
        double Along(PaperPoint p) => isHeight ? p.Y : p.X;
        double Outward(PaperPoint p) => isHeight ? p.X : p.Y;
        var taken = new List<List<(double From, double To)>>();
        var all = PaperBox.Empty;
        foreach (var span in spans.Where(span => span.Side == side).OrderBy(span => Math.Abs(Along(On(span.To)) - Along(On(span.From)))))
        {
            PaperPoint a = On(span.From), b = On(span.To);
            if (Along(a) > Along(b))
            {
                (a, b) = (b, a);
            }

            double low = Along(a), high = Along(b), length = high - low, width = SheetPens.Text.WidthOf(span.Text);
            bool holdsText = length >= width + 2 * Arrows.LengthMm + 1, holdsArrows = length >= 2 * Arrows.LengthMm + 0.6;
            double tail = holdsArrows ? 0 : Arrows.LengthMm + 2;

            // Text that does not fit between stands beyond the end: to the right, or upwards.
            double lineLow = low - tail, lineHigh = high + tail, textMiddle = (low + high) / 2;
            if (!holdsText)
            {
                if (isHeight)
                {
                    lineLow = low - Math.Max(tail, 1) - width - 1;
                    textMiddle = lineLow + width / 2;
                }
                else
                {
                    lineHigh = high + Math.Max(tail, 1) + width + 1;
                    textMiddle = lineHigh - width / 2;
                }
            }

            var level = 0;
            while (level < taken.Count && taken[level].Exists(other => lineLow < other.To + 1.5 && lineHigh > other.From - 1.5))
            {
                level++;
            }

            if (level == taken.Count)
            {
                taken.Add([]);
            }

            taken[level].Add((lineLow, lineHigh));
            var at = edge + outSign * (FirstMm + level * NextMm);
            foreach (var end in (PaperPoint[])[a, b])
            {
                var start = Outward(end) + outSign * GapMm;
                marks.Add(new Stroke(Place(Along(end), start), Place(Along(end), at + outSign * OverMm), SheetPens.Narrow));
            }

            marks.Add(new Stroke(Place(lineLow, at), Place(lineHigh, at), SheetPens.Narrow));
            var inward = holdsArrows ? -1 : 1;
            marks.Add(Arrows.Head(Place(low, at), Place(inward, 0)));
            marks.Add(Arrows.Head(Place(high, at), Place(-inward, 0)));
            var label = isHeight
                ? new Label(new PaperPoint(at - 0.9, textMiddle), span.Text, SheetPens.Text, Align.Centre, true)
                : new Label(new PaperPoint(textMiddle, at - 0.9), span.Text, SheetPens.Text, Align.Centre);
            texts.Add(label);
            all = all.Join(label.Box).Join(PaperBox.Around([Place(lineLow, at), Place(lineHigh, at + outSign * OverMm)]));
        }

        return all;
    }

    private PaperBox Column(bool isRight, PaperBox box, List<Mark> marks, List<Label> texts)
    {
        var own = leaders.Where(leader => leader.IsRight == isRight).OrderBy(leader => leader.At.Y).ToList();
        if (own.Count == 0)
        {
            return PaperBox.Empty;
        }

        // Each text as near to its place as those above leave it; the column is then moved up by half of what it hangs over.
        var ys = new double[own.Count];
        for (var i = 0; i < ys.Length; i++)
        {
            ys[i] = i == 0 ? own[i].At.Y : Math.Max(own[i].At.Y, ys[i - 1] + LeaderMm);
        }

        var over = Math.Max(0, (ys[^1] - own[^1].At.Y) / 2);
        over = Math.Min(over, Math.Max(0, ys[0] - box.Top) + 6);
        double x = isRight ? box.Right + 7 : box.Left - 7, shelf = isRight ? x - 2 : x + 2;
        var all = PaperBox.Empty;
        for (var i = 0; i < ys.Length; i++)
        {
            var y = ys[i] - over;
            PaperPoint at = own[i].At, knee = new(shelf, y);
            marks.Add(new Stroke([at, knee, new PaperPoint(isRight ? x - 0.6 : x + 0.6, y)], SheetPens.Narrow));
            marks.Add(Arrows.Head(at, at - knee));
            var label = new Label(new PaperPoint(x, y + SheetPens.Text.CapitalMm / 2), own[i].Text, SheetPens.Text, isRight ? Align.Left : Align.Right);
            texts.Add(label);
            all = all.Join(label.Box);
        }

        return all;
    }

    private sealed record Span(Side Side, FlatPoint From, FlatPoint To, string Text);
}
