using System.Collections.Immutable;

namespace Linewright.Solids.Outlines;

/// <summary>Cuts bodies by a plane across the view.</summary>
internal static class PlaneCut
{
    /// <summary>Where the plane at a depth cuts a body, as closed loops with the body on their left, seen from the eye.</summary>
    /// <remarks>
    /// A corner on the plane counts as nearer than it: then every side has either one crossing or none, and the loops of
    /// a closed surface close.
    /// </remarks>
    public static CutArea Of(PlacedBody placed, ViewFrame frame, double depth, double straightMm)
    {
        var (body, pose, tag, _) = placed;
        var over = new double[body.Corners.Length];
        for (var i = 0; i < over.Length; i++)
        {
            over[i] = frame.Depth(pose.Point(body.Corners[i])) - depth;
        }

        // Every triangle that is crossed has one corner alone on its side.
        var next = new Dictionary<long, (long To, FlatPoint At)>();
        for (var first = 0; first < over.Length; first += 3)
        {
            bool a = over[first] >= 0, b = over[first + 1] >= 0, c = over[first + 2] >= 0;
            if (a == b && b == c)
            {
                continue;
            }

            var alone = a == b ? first + 2 : b == c ? first : first + 1;
            int after = OutlineBody.Next(alone), last = OutlineBody.Next(after);

            // Seen from outside the triangle runs counter-clockwise; the loop runs so that the body lies to its left.
            var (from, to) = over[alone] >= 0 != pose.IsMirrored ? ((alone, after), (alone, last)) : ((alone, last), (alone, after));
            next[Joint(from)] = (Joint(to), Crossing(from));
        }

        // Follow each loop round; the order of the triangles is the order of the loops.
        var loops = ImmutableArray.CreateBuilder<ImmutableArray<FlatPoint>>();
        foreach (var start in next.Keys.ToList())
        {
            var loop = new List<FlatPoint>();
            for (var at = start; next.Remove(at, out var step); at = step.To)
            {
                loop.Add(step.At);
            }

            if (loop.Count > 2)
            {
                var straight = Chains.Straighten([.. loop, loop[0]], straightMm);
                if (straight.Length > 3)
                {
                    loops.Add(straight[..^1]);
                }
            }
        }

        return new CutArea(tag, loops.ToImmutable());

        long Joint((int From, int To) side)
        {
            int p = body.Places[side.From], q = body.Places[side.To];
            return OutlineBody.Key(Math.Min(p, q), Math.Max(p, q));
        }

        FlatPoint Crossing((int From, int To) side)
        {
            var (from, to) = body.Places[side.From] < body.Places[side.To] ? side : (side.To, side.From);
            var share = over[from] / (over[from] - over[to]);
            return frame.Flat(pose.Point(body.Corners[from] + (body.Corners[to] - body.Corners[from]) * share));
        }
    }
}
