using static System.FormattableString;

namespace Linewright.Layout;

/// <summary>The planner's sentences: short, with the numbers that decided.</summary>
internal static class LineReasons
{
    /// <summary>Why a candidate looks as it does.</summary>
    public static string Chosen(LineTask task, Sized s)
    {
        if (s.Kept)
        {
            return Invariant($"keeps the {task.GapPreferredMm:F2} mm gap; the clasp is {s.Clasp:F1} mm long");
        }

        var change = s.Pitch - task.StoneDiameterMm - task.GapPreferredMm;
        return s.ClaspAtPreferred < task.ClaspMinMm
            ? Invariant($"pitch tightened by {-change:F2} mm so that the clasp reaches {s.Clasp:F1} mm; at the {task.GapPreferredMm:F2} mm gap {Left(s)}")
            : Invariant($"pitch stretched by {change:F2} mm so that the clasp is no longer than {s.Clasp:F1} mm; at the {task.GapPreferredMm:F2} mm gap {Left(s)}");
    }

    /// <summary>Why a count does not do.</summary>
    public static LineMiss Miss(LineTask task, Sized s)
    {
        var gap = s.Pitch - task.StoneDiameterMm;
        if (s.ClaspAtPreferred < task.ClaspMinMm)
        {
            return new LineMiss(s.Count, s.ClaspAtPreferred, gap, Invariant(
                $"{s.Count} links {Leave(s)}, too short for a tongue that lasts ({task.ClaspMinMm:F1} mm needed); the gap would have to shrink to {gap:F2} mm, below {task.GapMinMm:F2} mm"));
        }

        return new LineMiss(s.Count, s.ClaspAtPreferred, gap, double.IsFinite(s.ClaspAtPreferred) && double.IsFinite(gap)
            ? Invariant($"{s.Count} links {Leave(s)}, too much for one clasp ({task.ClaspMaxMm:F1} mm at most); the gap would have to open to {gap:F2} mm, above {task.GapMaxMm:F2} mm")
            : Invariant($"{s.Count} links are too few to go round"));
    }

    /// <summary>Why there is no line at all.</summary>
    public static string Refused(LineTask task, Closing closing, double? shorter, double? longer)
    {
        var what = Invariant(
            $"no number of {task.StoneDiameterMm:F2} mm stones with gaps of {task.GapMinMm:F2} to {task.GapMaxMm:F2} mm and a clasp of {task.ClaspMinMm:F1} to {task.ClaspMaxMm:F1} mm makes {closing.AskedMm:F2} mm {closing.Measure}");
        return (shorter, longer) switch
        {
            ({ } low, { } high) => Invariant($"{what}; the nearest that work are {low:F2} and {high:F2} mm"),
            (null, { } high) => Invariant($"{what}; the shortest that works is {high:F2} mm"),
            _ => what,
        };
    }

    private static string Left(Sized s) => double.IsFinite(s.ClaspAtPreferred)
        ? Invariant($"{s.ClaspAtPreferred:F1} mm would be left for it")
        : "the ring would not close";

    private static string Leave(Sized s) => s.ClaspAtPreferred > 0
        ? Invariant($"leave {s.ClaspAtPreferred:F1} mm")
        : "leave nothing for the clasp";
}
