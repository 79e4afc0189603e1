using System.Collections.Immutable;

namespace Linewright.Solids.Outlines;

/// <summary>Where a plane cuts a body: closed loops, the body's inside on their left.</summary>
/// <param name="Tag">Of the body.</param>
/// <param name="Loops">Each three points or more, the last joined to the first.</param>
public sealed record CutArea(int Tag, ImmutableArray<ImmutableArray<FlatPoint>> Loops)
{
    private readonly (FlatPoint A, FlatPoint B)[] sides = [.. Loops.SelectMany(loop => loop.Select((a, i) => (a, loop[(i + 1) % loop.Length])))];
    private readonly (double Left, double Low, double Right, double High) box = BoxOf(Loops);

    /// <summary>Area, mm2: holes are taken off.</summary>
    public double Area => Loops.Sum(AreaOf);

    /// <summary>The parts of a straight piece that lie within the area, as shares of its length, added to a list.</summary>
    internal void Within(FlatPoint from, FlatPoint to, List<(double From, double To)> parts)
    {
        if (!IsNear(from, to))
        {
            return;
        }

        // Sides that the piece crosses part it; every part is in or out as a whole.
        List<double> shares = [0, 1];
        var along = to - from;
        foreach (var (a, b) in sides)
        {
            double atA = along.Cross(a - from), atB = along.Cross(b - from);
            if (atA > 0 != atB > 0)
            {
                var share = (a + (b - a) * (atA / (atA - atB)) - from).Dot(along) / along.Dot(along);
                if (share is > 0 and < 1)
                {
                    shares.Add(share);
                }
            }
        }

        shares.Sort();
        for (var i = 1; i < shares.Count; i++)
        {
            if (Holds(from + along * ((shares[i - 1] + shares[i]) / 2)))
            {
                parts.Add((shares[i - 1], shares[i]));
            }
        }
    }

    // Source: crossing number of a ray to the right, even outside.
    private bool Holds(FlatPoint p)
    {
        var isIn = false;
        foreach (var (a, b) in sides)
        {
            isIn ^= a.Y > p.Y != b.Y > p.Y && p.X < a.X + (b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y);
        }

        return isIn;
    }

    private bool IsNear(FlatPoint from, FlatPoint to)
        => Math.Max(from.X, to.X) >= box.Left && Math.Min(from.X, to.X) <= box.Right && Math.Max(from.Y, to.Y) >= box.Low && Math.Min(from.Y, to.Y) <= box.High;

    private static (double Left, double Low, double Right, double High) BoxOf(ImmutableArray<ImmutableArray<FlatPoint>> loops)
    {
        double left = double.PositiveInfinity, right = double.NegativeInfinity, low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (var p in loops.SelectMany(loop => loop))
        {
            (left, right) = (Math.Min(left, p.X), Math.Max(right, p.X));
            (low, high) = (Math.Min(low, p.Y), Math.Max(high, p.Y));
        }

        return (left, low, right, high);
    }

    /// <summary>Area within one loop, mm2; below zero where it runs clockwise, round a hole.</summary>
    public static double AreaOf(ImmutableArray<FlatPoint> loop)
    {
        var twice = 0.0;
        for (var i = 0; i < loop.Length; i++)
        {
            twice += loop[i].Cross(loop[(i + 1) % loop.Length]);
        }

        return twice / 2;
    }
}
