using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>Finds all lines that a body can show in a view: its edges, and where its smooth faces turn away from the eye.</summary>
internal static class LineFinder
{
    // A wall along the view faces the eye by nothing but rounding; taken for facing it by this much, it has no line of its
    // own, and the line falls on the edge at its far end. On a round of 2 mm it moves a contour by a tenth of a micrometre.
    private const double WallSine = 0.01;

    /// <summary>All pieces of one body, hidden or not.</summary>
    public static IEnumerable<LinePiece> Of(PlacedBody placed, ViewFrame frame)
    {
        var (body, pose, tag, _) = placed;
        Vec3[] corners = body.Corners, normals = body.Normals;
        var places = body.Places;

        // The eye in the body's own frame: turn one direction instead of every normal.
        var eye = new Vec3(pose.AxisX.Dot(frame.Toward), pose.AxisY.Dot(frame.Toward), pose.AxisZ.Dot(frame.Toward));
        foreach (var edge in body.Edges)
        {
            int from = edge.Corner, to = OutlineBody.Next(from);
            yield return new LinePiece(
                pose.Point(corners[from]), pose.Point(corners[to]), pose.Direction(edge.OutAtStart), pose.Direction(edge.OutAtEnd),
                places[from], places[to], OutlineKind.Edge, tag);
        }

        for (var first = 0; first < corners.Length; first += 3)
        {
            double a = Facing(normals[first], eye), b = Facing(normals[first + 1], eye), c = Facing(normals[first + 2], eye);
            if (a > 0 == b > 0 && b > 0 == c > 0)
            {
                continue;
            }

            // The corner that stands alone; the line crosses both of its sides.
            var alone = a > 0 == b > 0 ? first + 2 : b > 0 == c > 0 ? first : first + 1;
            int next = OutlineBody.Next(alone), last = OutlineBody.Next(next);
            var (p, outAtP) = Crossing(alone, next);
            var (q, outAtQ) = Crossing(alone, last);
            yield return new LinePiece(p, q, outAtP, outAtQ, Joint(alone, next), Joint(alone, last), OutlineKind.Contour, tag);
        }

        // Between faces that bend the contour runs along their side, where one faces the eye and the other does not.
        foreach (var (corner, otherAtStart, otherAtEnd) in body.Bends)
        {
            int start = corner, end = OutlineBody.Next(corner), otherStart = otherAtStart, otherEnd = otherAtEnd;
            if (places[start] > places[end])
            {
                (start, end, otherStart, otherEnd) = (end, start, otherEnd, otherStart);
            }

            double g = Facing(normals[start], eye), h = Facing(normals[end], eye), otherG = Facing(normals[otherStart], eye), otherH = Facing(normals[otherEnd], eye);
            bool partsAtStart = g > 0 != otherG > 0, partsAtEnd = h > 0 != otherH > 0;
            if (!partsAtStart && !partsAtEnd)
            {
                // Where both turn away on the way, their own contours meet here: the joint that they share closes the step.
                continue;
            }

            // Where either turns away; the side's end where neither does.
            double own = g > 0 != h > 0 ? g / (g - h) : double.NaN, others = otherG > 0 != otherH > 0 ? otherG / (otherG - otherH) : double.NaN;
            if (partsAtStart && partsAtEnd && double.IsNaN(own))
            {
                yield return Along(0, 1, places[start], places[end]);
                continue;
            }

            if (partsAtStart)
            {
                yield return Along(0, Least(own, others), places[start], Joint(start, end));
            }

            if (partsAtEnd)
            {
                yield return Along(Most(own, others), 1, Joint(start, end), places[end]);
            }

            LinePiece Along(double from, double to, long fromKey, long toKey) => new(
                pose.Point(corners[start] + (corners[end] - corners[start]) * from), pose.Point(corners[start] + (corners[end] - corners[start]) * to),
                pose.Direction((normals[start] + normals[otherStart]).Normalised()), pose.Direction((normals[end] + normals[otherEnd]).Normalised()),
                fromKey, toKey, OutlineKind.Contour, tag);
        }

        (Vec3 Point, Vec3 Out) Crossing(int from, int to)
        {
            // Always from the lower place, so that both triangles of an edge come to the same point.
            (from, to) = places[from] < places[to] ? (from, to) : (to, from);
            double g = Facing(normals[from], eye), h = Facing(normals[to], eye), share = g / (g - h);
            return (
                pose.Point(corners[from] + (corners[to] - corners[from]) * share),
                pose.Direction((normals[from] + (normals[to] - normals[from]) * share).Normalised()));
        }

        // Numbers of sides lie beyond those of places.
        long Joint(int from, int to) => OutlineBody.Key(Math.Min(places[from], places[to]) + 1, Math.Max(places[from], places[to]));
    }

    // Of two shares, of which one may be missing.
    private static double Least(double a, double b) => double.IsNaN(a) ? b : double.IsNaN(b) ? a : Math.Min(a, b);

    private static double Most(double a, double b) => double.IsNaN(a) ? b : double.IsNaN(b) ? a : Math.Max(a, b);

    private static double Facing(Vec3 normal, Vec3 eye) => normal.Dot(eye) + WallSine;
}
