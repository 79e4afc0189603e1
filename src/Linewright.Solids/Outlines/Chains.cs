using System.Collections.Immutable;

namespace Linewright.Solids.Outlines;

/// <summary>Joins straight pieces that share a joint into lines; a joint where more than two meet ends them.</summary>
internal static class Chains
{
    /// <summary>A piece on the paper between two numbered joints.</summary>
    public readonly record struct Span(FlatPoint From, FlatPoint To, long FromJoint, long ToJoint);

    /// <summary>Lines of two points or more; closed ones end where they begin. The order follows that of the pieces.</summary>
    public static List<List<FlatPoint>> Join(IReadOnlyList<Span> spans)
    {
        var atJoint = new Dictionary<long, List<int>>();
        for (var i = 0; i < spans.Count; i++)
        {
            At(spans[i].FromJoint).Add(i);
            At(spans[i].ToJoint).Add(i);
        }

        var used = new bool[spans.Count];
        var lines = new List<List<FlatPoint>>();
        for (var i = 0; i < spans.Count; i++)
        {
            if (used[i])
            {
                continue;
            }

            used[i] = true;
            var line = new LinkedList<FlatPoint>([spans[i].From, spans[i].To]);
            Walk(spans[i].ToJoint, line.AddLast);
            Walk(spans[i].FromJoint, line.AddFirst);
            lines.Add([.. line]);
        }

        return lines;

        List<int> At(long joint) => atJoint.TryGetValue(joint, out var list) ? list : atJoint[joint] = [];

        void Walk(long joint, Func<FlatPoint, LinkedListNode<FlatPoint>> add)
        {
            while (atJoint[joint] is { Count: 2 } two)
            {
                var next = used[two[0]] ? two[1] : two[0];
                if (used[next])
                {
                    return;
                }

                used[next] = true;
                var span = spans[next];
                var forward = span.FromJoint == joint;
                add(forward ? span.To : span.From);
                joint = forward ? span.ToJoint : span.FromJoint;
            }
        }
    }

    /// <summary>Leaves out points that lie within a distance of the line through those that stay.</summary>
    /// <remarks>Source: Douglas and Peucker (1973), Cartographica 10, 112.</remarks>
    public static ImmutableArray<FlatPoint> Straighten(IReadOnlyList<FlatPoint> points, double within)
    {
        var keep = new bool[points.Count];
        keep[0] = keep[^1] = true;
        var open = new Stack<(int First, int Last)>();
        open.Push((0, points.Count - 1));
        while (open.TryPop(out var part))
        {
            var (worst, at) = (within, -1);
            for (var i = part.First + 1; i < part.Last; i++)
            {
                var off = DistanceTo(points[i], points[part.First], points[part.Last]);
                if (off > worst)
                {
                    (worst, at) = (off, i);
                }
            }

            if (at >= 0)
            {
                keep[at] = true;
                open.Push((part.First, at));
                open.Push((at, part.Last));
            }
        }

        return [.. points.Where((_, i) => keep[i])];
    }

    /// <summary>Distance of a point from a straight piece.</summary>
    public static double DistanceTo(FlatPoint p, FlatPoint a, FlatPoint b)
    {
        FlatPoint along = b - a, from = p - a;
        var square = along.Dot(along);
        var share = square > 0 ? Math.Clamp(from.Dot(along) / square, 0, 1) : 0;
        return (from - along * share).Length;
    }
}
