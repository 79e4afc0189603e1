using System.Collections.Immutable;

namespace Linewright.Solids.Outlines;

/// <summary>Front door of the room: draws bodies as a draughtsman would, from their surfaces and not from a picture.</summary>
/// <remarks>
/// Lines are edges and contours; each is split where something comes before it, by the triangles themselves, and pieces
/// are joined to lines. What is promised: a line lies within the lift and the straightening of the settings beside where
/// the surface has it, and no line is drawn twice. What is not: a rounded edge shows no line but where it turns away.
/// The same bodies give the same lines.
/// </remarks>
public static class OutlineDrawer
{
    /// <summary>Draws one view of some bodies.</summary>
    /// <param name="bodies">All that is in the view; they hide each other.</param>
    /// <param name="frame">From where.</param>
    /// <param name="settings">How closely, whether with hidden lines, whether cut.</param>
    public static OutlineView Draw(IReadOnlyList<PlacedBody> bodies, ViewFrame frame, OutlineSettings settings)
    {
        ArgumentNullException.ThrowIfNull(bodies);
        ArgumentNullException.ThrowIfNull(settings);
        var cutDepth = settings.CutDepth ?? double.PositiveInfinity;
        ImmutableArray<CutArea> cuts = settings.CutDepth is { } depth
            ? [.. bodies.Select(body => PlaneCut.Of(body, frame, depth, settings.StraightMm)).Where(cut => !cut.Loops.IsEmpty)]
            : [];
        var occluder = new Occluder(bodies, frame, cutDepth);
        List<(List<FlatPoint> Points, OutlineKind Kind, int Tag)> visible = [], hidden = [];
        foreach (var cut in cuts)
        {
            visible.AddRange(cut.Loops.Select(loop => ((List<FlatPoint>)[.. loop, loop[0]], OutlineKind.Cut, cut.Tag)));
        }

        foreach (var body in bodies.Where(body => !body.IsMask))
        {
            foreach (var kind in LineFinder.Of(body, frame).GroupBy(piece => piece.Kind))
            {
                var (seen, unseen) = Split([.. kind], frame, occluder, cuts, cutDepth, settings.LiftMm);
                visible.AddRange(Chains.Join(seen).Select(line => (line, kind.Key, body.Tag)));
                hidden.AddRange(settings.WithHidden ? Chains.Join(unseen).Select(line => (line, kind.Key, body.Tag)) : []);
            }
        }

        var drawn = new DrawnLines(settings.SameMm);
        return new OutlineView([.. Lines(visible, true), .. Lines(hidden, false)], cuts);

        IEnumerable<OutlineLine> Lines(List<(List<FlatPoint> Points, OutlineKind Kind, int Tag)> found, bool isVisible)
        {
            // Cuts first, then the longest: a short line gives way to a long one. Equal ones keep their order.
            var straight = found.Select(line => new OutlineLine(Chains.Straighten(line.Points, settings.StraightMm), line.Kind, isVisible, line.Tag)).ToList();
            foreach (var line in straight.OrderByDescending(line => line.Kind == OutlineKind.Cut).ThenByDescending(line => line.Length))
            {
                bool IsLoose(FlatPoint end) => !straight.Exists(other => !ReferenceEquals(other, line) && Passes(other, end, settings.SameMm));
                foreach (var part in drawn.NewParts(line.Points))
                {
                    var points = Chains.Straighten(part, settings.StraightMm / 10);
                    var own = line with { Points = points };
                    var isSpeck = own.Kind == OutlineKind.Contour && (points[0] - points[^1]).Length > settings.SameMm
                        && own.Length < 2 * settings.SpeckMm
                        && own.Length < settings.SpeckMm * ((IsLoose(points[0]) ? 1 : 0) + (IsLoose(points[^1]) ? 1 : 0));
                    if (own.Length >= settings.ShortestMm && !isSpeck)
                    {
                        drawn.Add(points);
                        yield return own;
                    }
                }
            }
        }
    }

    // Whether a line passes a place, in whatever direction.
    private static bool Passes(OutlineLine line, FlatPoint p, double within)
    {
        for (var i = 1; i < line.Points.Length; i++)
        {
            if (Chains.DistanceTo(p, line.Points[i - 1], line.Points[i]) <= within)
            {
                return true;
            }
        }

        return false;
    }

    private static (List<Chains.Span> Seen, List<Chains.Span> Unseen) Split(
        List<LinePiece> pieces, ViewFrame frame, Occluder occluder, ImmutableArray<CutArea> cuts, double cutDepth, double lift)
    {
        List<Chains.Span> seen = [], unseen = [];
        var hidden = new List<(double From, double To)>();
        long fresh = 0;
        foreach (var piece in pieces)
        {
            // What the section takes away is gone.
            double start = 0, end = 1, fromDepth = frame.Depth(piece.From), toDepth = frame.Depth(piece.To);
            if (fromDepth > cutDepth && toDepth > cutDepth)
            {
                continue;
            }

            if (fromDepth > cutDepth)
            {
                start = (fromDepth - cutDepth) / (fromDepth - toDepth);
            }
            else if (toDepth > cutDepth)
            {
                end = (cutDepth - fromDepth) / (toDepth - fromDepth);
            }

            // Look past the body's own triangles, from a little off its surface.
            FlatPoint from = frame.Flat(piece.From), to = frame.Flat(piece.To);
            var (eyeFrom, eyeTo) = (piece.From + piece.OutAtFrom * lift, piece.To + piece.OutAtTo * lift);
            occluder.Hide(frame.Flat(eyeFrom), frame.Flat(eyeTo), frame.Depth(eyeFrom), frame.Depth(eyeTo), hidden);
            foreach (var cut in cuts)
            {
                // Where two bodies touch, the lifted line lies within the other, which is cut open: its cut face hides it.
                cut.Within(from, to, hidden);
            }

            Occluder.Join(hidden);
            var at = start;
            foreach (var (hideFrom, hideTo) in hidden)
            {
                Add(seen, at, Math.Min(hideFrom, end));
                Add(unseen, Math.Max(at, hideFrom), Math.Min(hideTo, end));
                at = Math.Max(at, hideTo);
            }

            Add(seen, at, end);

            void Add(List<Chains.Span> spans, double a, double b)
            {
                if (a < b)
                {
                    spans.Add(new Chains.Span(
                        from + (to - from) * a, from + (to - from) * b, a <= 0 ? piece.FromKey : --fresh, b >= 1 ? piece.ToKey : --fresh));
                }
            }
        }

        return (seen, unseen);
    }
}
