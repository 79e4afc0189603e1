using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>Fills cut areas with parallel lines.</summary>
public static class Hatching
{
    /// <summary>Lines across an area at an angle, evenly apart, cut off at its loops.</summary>
    /// <param name="area">The area; what lies within an odd number of loops is filled.</param>
    /// <param name="angle">Of the lines from the horizontal, radians.</param>
    /// <param name="apart">From line to line, mm in the view.</param>
    /// <returns>Both ends of every line.</returns>
    public static IReadOnlyList<(FlatPoint From, FlatPoint To)> Lines(CutArea area, double angle, double apart)
    {
        ArgumentNullException.ThrowIfNull(area);
        Guard.Positive(apart);
        FlatPoint along = new(Math.Cos(angle), Math.Sin(angle)), across = new(-along.Y, along.X);

        // Where each side of a loop passes a line; lines lie half a step off the origin, so that none runs through corners that stand on it.
        var hits = new SortedDictionary<int, List<double>>();
        foreach (var loop in area.Loops)
        {
            for (var i = 0; i < loop.Length; i++)
            {
                FlatPoint a = loop[i], b = loop[(i + 1) % loop.Length];
                double u = a.Dot(across) / apart - 0.5, v = b.Dot(across) / apart - 0.5;
                for (var line = (int)Math.Ceiling(Math.Min(u, v)); line < Math.Max(u, v); line++)
                {
                    if (!hits.TryGetValue(line, out var list))
                    {
                        hits.Add(line, list = []);
                    }

                    list.Add((a + (b - a) * ((line - u) / (v - u))).Dot(along));
                }
            }
        }

        var lines = new List<(FlatPoint, FlatPoint)>();
        foreach (var (line, places) in hits)
        {
            places.Sort();
            var foot = across * ((line + 0.5) * apart);
            for (var i = 0; i + 1 < places.Count; i += 2)
            {
                lines.Add((foot + along * places[i], foot + along * places[i + 1]));
            }
        }

        return lines;
    }
}
