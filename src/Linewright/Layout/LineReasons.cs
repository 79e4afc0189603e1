using Linewright.Brief;
using static System.FormattableString;

namespace Linewright.Layout;

/// <summary>The planner's sentences: short, with the numbers that decided.</summary>
internal static class LineReasons
{
    // Less than this would be printed as 0.0 mm.
    private const double LeastLeftMm = 0.05;

    /// <summary>Why a candidate looks as it does.</summary>
    public static string Chosen(LineTask task, Sized s)
    {
        if (s.Kept)
        {
            return Invariant($"keeps the {task.GapPreferredMm:F2} mm gap; the clasp is {s.Clasp:F1} mm long");
        }

        if (Change(Math.Abs(s.Pitch - task.StoneDiameterMm - task.GapPreferredMm)) is not { } change)
        {
            return Invariant($"keeps the {task.GapPreferredMm:F2} mm gap to a hair; the clasp is {s.Clasp:F1} mm long, its limit");
        }

        return s.ClaspAtPreferred < task.ClaspMinMm
            ? Invariant($"pitch tightened by {change} mm so that the clasp reaches {s.Clasp:F1} mm; at the {task.GapPreferredMm:F2} mm gap {Left(s)}")
            : Invariant($"pitch stretched by {change} mm so that the clasp is no longer than {s.Clasp:F1} mm; at the {task.GapPreferredMm:F2} mm gap {Left(s)}");
    }

    /// <summary>Why a count does not do.</summary>
    public static LineMiss Miss(LineTask task, Sized s)
    {
        var gap = s.Pitch - task.StoneDiameterMm;
        if (s.ClaspAtPreferred < task.ClaspMinMm)
        {
            return new LineMiss(s.Count, s.ClaspAtPreferred, gap, Invariant(
                $"{s.Count} links {Leave(s)}, too short for a tongue that lasts ({LimitText.AtLeast(task.ClaspMinMm, 1)} mm needed); {Shrunk(task, gap)}"));
        }

        return new LineMiss(s.Count, s.ClaspAtPreferred, gap, double.IsFinite(s.ClaspAtPreferred) && double.IsFinite(gap)
            ? Invariant($"{s.Count} links {Leave(s)}, too much for one clasp ({LimitText.AtMost(task.ClaspMaxMm, 1)} mm at most); the gap would have to open to {LimitText.AtLeast(gap, 2)} mm, above {task.GapMaxMm:F2} mm")
            : Invariant($"{s.Count} links are too few to go round"));
    }

    /// <summary>Why there is no line at all, and the nearest lengths, rounded to the side that works.</summary>
    /// <param name="task">What was asked.</param>
    /// <param name="closing">Length or wrist.</param>
    /// <param name="shorter">The longest length below the one asked for, null where there is none.</param>
    /// <param name="longer">The shortest length above it, null where there is none.</param>
    /// <param name="shorterRoom">How far below <paramref name="shorter"/> still works.</param>
    /// <param name="longerRoom">How far above <paramref name="longer"/> still works.</param>
    public static string Refused(LineTask task, Closing closing, double? shorter, double? longer, double shorterRoom, double longerRoom)
    {
        var what = Invariant(
            $"no number of {task.StoneDiameterMm:F2} mm stones with gaps of {task.GapMinMm:F2} to {task.GapMaxMm:F2} mm and a clasp of {task.ClaspMinMm:F1} to {task.ClaspMaxMm:F1} mm makes {closing.AskedMm:F2} mm {closing.Measure}");
        return (shorter, longer) switch
        {
            ({ } low, { } high) => $"{what}; the nearest that work are {LimitText.AtMost(low, 2, shorterRoom)} and {LimitText.AtLeast(high, 2, longerRoom)} mm",
            ({ } low, null) => $"{what}; the longest that works is {LimitText.AtMost(low, 2, shorterRoom)} mm",
            (null, { } high) => $"{what}; the shortest that works is {LimitText.AtLeast(high, 2, longerRoom)} mm",
            _ => what,
        };
    }

    private static string Shrunk(LineTask task, double gap) => gap >= 0.01
        ? Invariant($"the gap would have to shrink to {LimitText.AtMost(gap, 2)} mm, below {task.GapMinMm:F2} mm")
        : "even stones that touch would leave too little";

    // With as many decimals as it takes to be no zero; null where it is nothing that could be made.
    private static string? Change(double mm) => mm switch
    {
        >= 0.005 => Invariant($"{mm:F2}"),
        >= 0.0005 => Invariant($"{mm:F3}"),
        >= 0.00005 => Invariant($"{mm:F4}"),
        _ => null,
    };

    private static string Left(Sized s) => s.ClaspAtPreferred switch
    {
        double.NegativeInfinity or double.PositiveInfinity or double.NaN => "the ring would not close",
        >= LeastLeftMm => Invariant($"{s.ClaspAtPreferred:F1} mm would be left for it"),
        _ => "nothing would be left for it",
    };

    private static string Leave(Sized s) => s.ClaspAtPreferred >= LeastLeftMm
        ? Invariant($"leave {s.ClaspAtPreferred:F1} mm")
        : "leave nothing for the clasp";
}
