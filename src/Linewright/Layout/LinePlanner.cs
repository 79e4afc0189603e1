using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>Finds every count, pitch and clasp that close a line to the length asked for, and ranks them.</summary>
/// <remarks>
/// For each count the preferred gap is kept where the clasp then lies within its limits. Otherwise the pitch is
/// stretched or tightened the least that brings the clasp to its nearest limit, if the gap stays within its own.
/// The clasp is the exact remainder, so the line closes to rounding. Ranked by what the design gives up: change of
/// pitch and clasp off its ideal, weighed against each other. Does not see links or clasps as solids; checks do.
/// </remarks>
public static class LinePlanner
{
    /// <summary>How many candidates a plan keeps: more than anybody reads.</summary>
    public const int MostCandidates = 12;

    // How many counts on either side of those that do are explained.
    private const int MostMissesEachSide = 3;

    // Designers' tables go to two or three digits: a limit missed by rounding is not missed.
    private const double Slack = 1e-9;

    // Common practice: the pitch gives by up to 0.1 mm; the eye sees it as much as 2.5 mm of clasp. The second: Assumed.
    private const double PitchStepMm = 0.1, ClaspStepMm = 2.5;

    // Assumed: nothing worn is longer, and no stone smaller or larger is set in a line.
    private const double LongestMm = 10_000;
    private const double SmallestStoneMm = 0.1;
    private const double LargestStoneMm = 100;

    /// <summary>Plans for the task's laid-flat length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is no number or has an impossible sign.</exception>
    public static LinePlan Plan(LineTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        return Plan(task, new Closing.Flat(Guard.InRange(task.LaidFlatMm, double.Epsilon, LongestMm, nameof(LineTask.LaidFlatMm))));
    }

    /// <summary>Plans backwards from an inside circumference (wrist and ease): every candidate meets it exactly on a round wrist, each with its own length.</summary>
    /// <param name="task">Its laid-flat length is not read.</param>
    /// <param name="insideCircumference">What the wrist shall feel, mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is no number or has an impossible sign.</exception>
    public static LinePlan PlanForWrist(LineTask task, double insideCircumference)
    {
        ArgumentNullException.ThrowIfNull(task);
        return Plan(task, new Closing.Wrist(Guard.InRange(insideCircumference, double.Epsilon, LongestMm), task.HingeHeightMm));
    }

    private static LinePlan Plan(LineTask task, Closing closing)
    {
        GuardFigures(task);
        if (Contradiction(task) is { } contradiction)
        {
            return new LinePlan(task, [], 0, [], new LineRefusal(contradiction, null, null));
        }

        // A count works exactly when its widest line reaches what was asked and its tightest leaves the shortest clasp.
        var first = FirstCount(n => closing.Clasp(n, task.StoneDiameterMm + task.GapMaxMm) <= task.ClaspMaxMm + Slack);
        var beyond = FirstCount(n => closing.Clasp(n, task.StoneDiameterMm + task.GapMinMm) < task.ClaspMinMm - Slack);
        var found = Enumerable.Range(first, beyond - first).Select(n => Size(task, closing, n)).ToList();
        var misses = Enumerable.Range(first - MostMissesEachSide, MostMissesEachSide).Where(n => n >= HingeChain.LeastCount)
            .Concat(Enumerable.Range(beyond, MostMissesEachSide))
            .Select(n => LineReasons.Miss(task, Size(task, closing, n)));

        // Best first; the count decides between equals, so that the order never depends on the sort.
        var ranked = found
            .OrderBy(s => Cost(task, s))
            .ThenBy(s => s.Count)
            .Take(MostCandidates)
            .Select(s => Candidate(task, s))
            .ToImmutableArray();
        return new LinePlan(task, ranked, found.Count, [.. misses], found.Count > 0 ? null : Refusal(task, closing, first));
    }

    /// <summary>What a line costs the design: a changed pitch and a clasp off its ideal, each in steps that a designer would call one.</summary>
    private static double Cost(LineTask task, Sized s)
        => Math.Abs(s.Pitch - PreferredPitch(task)) / PitchStepMm + Math.Abs(s.Clasp - task.ClaspIdealMm) / ClaspStepMm;

    private static double PreferredPitch(LineTask task) => task.StoneDiameterMm + task.GapPreferredMm;

    /// <summary>The first count for which a claim holds that, once true, stays true for more links.</summary>
    private static int FirstCount(Func<int, bool> holds)
    {
        int low = HingeChain.LeastCount, high = low;
        while (!holds(high))
        {
            (low, high) = (high, high * 2);
        }

        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = holds(middle) ? (low, middle) : (middle + 1, high);
        }

        return high;
    }

    private static Sized Size(LineTask task, Closing closing, int count)
    {
        var preferred = PreferredPitch(task);
        var left = closing.Clasp(count, preferred);
        if (left >= task.ClaspMinMm - Slack && left <= task.ClaspMaxMm + Slack)
        {
            return new Sized(count, preferred, left, left, Kept: true);
        }

        // Bring the clasp to its nearest limit; the clasp itself stays the exact remainder.
        var limit = left < task.ClaspMinMm ? task.ClaspMinMm : task.ClaspMaxMm;
        var pitch = closing.Pitch(count, limit);
        return new Sized(count, pitch, closing.Clasp(count, pitch), left, Kept: false);
    }

    private static LineCandidate Candidate(LineTask task, Sized s) => new(
        s.Count,
        s.Pitch,
        s.Pitch - task.StoneDiameterMm,
        s.Clasp,
        s.Count * s.Pitch + s.Clasp,
        s.Kept ? 0 : s.Pitch - PreferredPitch(task),
        RoundFit.Solve(s.Count, s.Pitch, s.Clasp, task.HingeHeightMm),
        2 * task.PlayMm * (s.Count + 1),
        s.Count * task.StoneCt,
        LineReasons.Chosen(task, s));

    private static LineRefusal Refusal(LineTask task, Closing closing, int count)
    {
        // The lengths that work are one stretch for each count; find the nearest ends on either side.
        double tight = task.StoneDiameterMm + task.GapMinMm, wide = task.StoneDiameterMm + task.GapMaxMm;
        double? longer = closing.Reach(count, tight, task.ClaspMinMm);
        double? shorter = count > HingeChain.LeastCount ? closing.Reach(count - 1, wide, task.ClaspMaxMm) : null;
        var longerRoom = closing.Reach(count, wide, task.ClaspMaxMm) - longer.Value;
        var shorterRoom = shorter - closing.Reach(Math.Max(count - 1, HingeChain.LeastCount), tight, task.ClaspMinMm) ?? 0;

        // What may not be asked for is no advice.
        longer = longer <= task.LongestAskedMm ? longer : null;
        shorter = shorter >= task.ShortestAskedMm ? shorter : null;
        return new LineRefusal(LineReasons.Refused(task, closing, shorter, longer, shorterRoom, longerRoom), shorter, longer);
    }

    private static string? Contradiction(LineTask task)
    {
        if (!(task.GapMinMm <= task.GapPreferredMm && task.GapPreferredMm <= task.GapMaxMm))
        {
            return FormattableString.Invariant($"the preferred gap of {task.GapPreferredMm:F2} mm lies outside its limits of {task.GapMinMm:F2} to {task.GapMaxMm:F2} mm");
        }

        return task.ClaspMinMm <= task.ClaspIdealMm && task.ClaspIdealMm <= task.ClaspMaxMm
            ? null
            : FormattableString.Invariant($"the ideal clasp of {task.ClaspIdealMm:F1} mm lies outside its limits of {task.ClaspMinMm:F1} to {task.ClaspMaxMm:F1} mm");
    }

    private static void GuardFigures(LineTask task)
    {
        Guard.InRange(task.StoneDiameterMm, SmallestStoneMm, LargestStoneMm, nameof(LineTask.StoneDiameterMm));
        Guard.InRange(task.GapMinMm, 0, double.MaxValue, nameof(LineTask.GapMinMm));
        Guard.InRange(task.GapPreferredMm, 0, double.MaxValue, nameof(LineTask.GapPreferredMm));
        Guard.InRange(task.GapMaxMm, 0, double.MaxValue, nameof(LineTask.GapMaxMm));
        Guard.Positive(task.ClaspMinMm, nameof(LineTask.ClaspMinMm));
        Guard.Positive(task.ClaspIdealMm, nameof(LineTask.ClaspIdealMm));
        Guard.Positive(task.ClaspMaxMm, nameof(LineTask.ClaspMaxMm));
        Guard.InRange(task.HingeHeightMm, 0, double.MaxValue, nameof(LineTask.HingeHeightMm));
        Guard.InRange(task.PlayMm, 0, double.MaxValue, nameof(LineTask.PlayMm));
        Guard.InRange(task.StoneCt, 0, double.MaxValue, nameof(LineTask.StoneCt));
    }
}
