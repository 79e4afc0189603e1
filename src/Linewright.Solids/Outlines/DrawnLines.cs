namespace Linewright.Solids.Outlines;

/// <summary>What has been drawn so far, so that no line is drawn where another runs already.</summary>
internal sealed class DrawnLines(double within)
{
    // Two lines that cross are two; those that run along each other within this angle are one. Assumed.
    private static readonly double LeastCosine = Math.Cos(25 * Math.PI / 180);

    private readonly Dictionary<(int X, int Y), List<(FlatPoint A, FlatPoint B)>> cells = [];

    // A cell holds what may be within reach of a step.
    private double Cell => 8 * within;

    /// <summary>Takes a line in.</summary>
    public void Add(IReadOnlyList<FlatPoint> line)
    {
        for (var i = 1; i < line.Count; i++)
        {
            FlatPoint a = line[i - 1], b = line[i];
            var steps = Math.Max(1, (int)Math.Ceiling((b - a).Length / Cell));
            for (var s = 0; s < steps; s++)
            {
                FlatPoint from = a + (b - a) * ((double)s / steps), to = a + (b - a) * ((s + 1.0) / steps);
                var (low, high) = (CellOf(new(Math.Min(from.X, to.X) - within, Math.Min(from.Y, to.Y) - within)), CellOf(new(Math.Max(from.X, to.X) + within, Math.Max(from.Y, to.Y) + within)));
                for (var x = low.X; x <= high.X; x++)
                {
                    for (var y = low.Y; y <= high.Y; y++)
                    {
                        if (!cells.TryGetValue((x, y), out var list))
                        {
                            cells.Add((x, y), list = []);
                        }

                        if (list.Count == 0 || list[^1] != (a, b))
                        {
                            list.Add((a, b));
                        }
                    }
                }
            }
        }
    }

    /// <summary>The parts of a line that no other runs along.</summary>
    public List<List<FlatPoint>> NewParts(IReadOnlyList<FlatPoint> line)
    {
        var parts = new List<List<FlatPoint>>();
        List<FlatPoint>? part = null;
        for (var i = 1; i < line.Count; i++)
        {
            FlatPoint a = line[i - 1], b = line[i];
            var length = (b - a).Length;
            if (length == 0)
            {
                continue;
            }

            var along = (b - a) * (1 / length);
            var steps = Math.Max(1, (int)Math.Ceiling(length / within));
            for (var s = 0; s < steps; s++)
            {
                FlatPoint from = a + (b - a) * ((double)s / steps), to = a + (b - a) * ((s + 1.0) / steps);
                if (IsDrawn((from + to) * 0.5, along))
                {
                    part = null;
                    continue;
                }

                if (part is null)
                {
                    part = [from];
                    parts.Add(part);
                }

                part.Add(to);
            }
        }

        return parts;
    }

    private bool IsDrawn(FlatPoint p, FlatPoint along)
    {
        if (!cells.TryGetValue(CellOf(p), out var list))
        {
            return false;
        }

        foreach (var (a, b) in list)
        {
            // Beside it, not before or after it: a line that goes on where another ends is none that runs along it.
            FlatPoint other = b - a, from = p - a;
            double length = other.Length, at = from.Dot(other), past = length * within / 4;
            if (Math.Abs(other.Dot(along)) >= LeastCosine * length && at >= -past && at <= length * length + past && Math.Abs(from.Cross(other)) <= within * length)
            {
                return true;
            }
        }

        return false;
    }

    private (int X, int Y) CellOf(FlatPoint p) => ((int)Math.Floor(p.X / Cell), (int)Math.Floor(p.Y / Cell));
}
