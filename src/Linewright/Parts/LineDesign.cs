using Linewright.Brief;
using Linewright.Layout;

namespace Linewright.Parts;

/// <summary>A brief carried as far as numbers go: the joint, every way to lay the line out, and the one chosen.</summary>
/// <remarks>
/// The joint and the tongue come before the layout, because they decide how high the hinge stands and how short the
/// clasp may be; the layout only sees those as numbers. Nothing here is meshed: a design takes milliseconds.
/// </remarks>
public sealed record LineDesign
{
    // A clasp a little longer than it must be gives the tongue ease; the layout needs about a pitch of room above. Assumed.
    private const double EaseMm = 0.4, RoomMm = 5.5;

    // A limit missed by rounding is not missed.
    private const double Slack = 1e-9;

    // Where the joint sets the gap, the layout still needs room to close. Assumed.
    private const double GapRoomMm = 0.12;

    // Stones further apart than this part of their diameter no longer read as a line. Assumed.
    private const double WidestGap = 0.45;

    /// <summary>What was asked.</summary>
    public required ResolvedBrief Brief { get; init; }

    /// <summary>What shapes the parts; null where the stone itself cannot be cut.</summary>
    public LineSpec? Spec { get; private init; }

    /// <summary>The joint; null with the spec.</summary>
    public HingeForm? Hinge { get; private init; }

    /// <summary>Width of the line at the preferred gap, mm: what the shortest clasp was reckoned from; 0 where there is no layout.</summary>
    /// <remarks>At another pitch the line may be some micrometres narrower; a clasp built to that width would be too short for its tongue.</remarks>
    public double LineWidthMm { get; private init; }

    /// <summary>All layouts, best first; null where the stone cannot be cut.</summary>
    public LinePlan? Plan { get; private init; }

    /// <summary>Why there is no line; empty where there is one.</summary>
    public required string Refusal { get; init; }

    /// <summary>The layout taken; null where the line is refused.</summary>
    public LineCandidate? Chosen => Plan?.Best;

    /// <summary>Solves a brief.</summary>
    public static LineDesign Solve(ResolvedBrief brief)
    {
        var (spec, reason) = LineSpecs.Of(brief);
        if (spec is null)
        {
            return new LineDesign { Brief = brief, Refusal = reason };
        }

        var hinge = HingeForm.Derive(spec);
        var d = brief.Stone.DiameterMm;

        // Under small stones the joint, not the girdles, sets how close the links may stand.
        var gapMin = Math.Max(brief.Link.StoneGapMinMm, hinge.LeastPitchMm - d);
        if (gapMin > Math.Max(WidestGap * d, brief.Link.StoneGapMaxMm) + Slack)
        {
            return new LineDesign { Brief = brief, Spec = spec, Hinge = hinge, Refusal = TooFarApart(brief, hinge, gapMin) };
        }

        var gap = Math.Max(brief.Link.StoneGapMm, gapMin);
        var gapMax = Math.Max(brief.Link.StoneGapMaxMm, gapMin + GapRoomMm);
        var width = LinkForm.Derive(spec, hinge, d + gap).WidthMm;
        var least = Math.Max(ClaspForm.LeastLength(spec, hinge, width), brief.Clasp.LengthMinMm ?? 0);
        var most = brief.Clasp.LengthMaxMm ?? least + Math.Max(RoomMm, d + gapMax);
        if (most < least - Slack)
        {
            return new LineDesign
            {
                Brief = brief,
                Spec = spec,
                Hinge = hinge,
                Refusal = FormattableString.Invariant(
                    $"clasp.length_max_mm is {BriefField.Format(most)}, but the shortest clasp whose tongue lasts in {brief.Metal} is {LimitText.AtLeast(least, 2)} mm long; raise clasp.length_max_mm to that"),
            };
        }

        // A usual clasp where one closes; any other that the tongue and the brief allow only where none does.
        var task = new LineTask(
            d, brief.Length.LaidFlatMm ?? 0, gap, gapMin, gapMax,
            least, least, Math.Max(least, most), hinge.HeightMm, hinge.PlayMm,
            brief.Species.WeightOf(spec.Stone.VolumeMm3).Value);
        var usual = PlanWithin(
            task,
            brief,
            brief.Clasp.LengthMinMm is null && task.ClaspMaxMm >= ClaspRange.UsualLowMm ? Math.Max(task.ClaspMinMm, ClaspRange.UsualLowMm) : task.ClaspMinMm,
            brief.Clasp.LengthMaxMm is null && task.ClaspMinMm <= ClaspRange.UsualHighMm ? Math.Min(task.ClaspMaxMm, ClaspRange.UsualHighMm) : task.ClaspMaxMm);
        var plan = usual.Best is null ? PlanWithin(task, brief, task.ClaspMinMm, task.ClaspMaxMm) : usual;
        return new LineDesign { Brief = brief, Spec = spec, Hinge = hinge, Plan = plan, LineWidthMm = width, Refusal = Said(plan, brief.Length) };
    }

    private static string TooFarApart(ResolvedBrief brief, HingeForm hinge, double gap)
    {
        var stone = brief.Stone;
        var way = $"set link.stone_gap_max_mm to {LimitText.AtLeast(gap, 2)} if that is wanted, or take a metal that casts thinner";
        const double step = 0.1;
        for (var d = Math.Ceiling(stone.DiameterMm / step) * step; d <= BriefFields.At("stone.diameter_mm")!.High; d += step)
        {
            if (LineSpecs.Of(brief with { Stone = stone with { DiameterMm = d } }).Spec is { } larger
                && HingeForm.Derive(larger).LeastPitchMm - d <= WidestGap * d + Slack)
            {
                way = $"take stones from {LimitText.AtLeast(d, 1)} mm up, {way}";
                break;
            }
        }

        return FormattableString.Invariant(
            $"stones of {BriefField.Format(stone.DiameterMm)} mm would stand {gap:0.00} mm apart, because the joint that {brief.Metal} allows needs a pitch of {hinge.LeastPitchMm:0.00} mm; {way}");
    }

    private static LinePlan PlanWithin(LineTask task, ResolvedBrief brief, double shortest, double longest)
    {
        var within = task with
        {
            ClaspMinMm = shortest,
            ClaspIdealMm = Math.Clamp(task.ClaspMinMm + EaseMm, shortest, longest),
            ClaspMaxMm = longest,
        };
        return brief.Length is { WristMm: { } wrist, EaseMm: { } ease }
            ? LinePlanner.PlanForWrist(Asked(within, "length.wrist_mm", ease), wrist + ease)
            : LinePlanner.Plan(Asked(within, "length.laid_flat_mm", 0));
    }

    /// <summary>The task with the lengths that the brief's field may ask for.</summary>
    private static LineTask Asked(LineTask task, string path, double ease)
    {
        var field = BriefFields.At(path)!;
        return task with { ShortestAskedMm = field.Low + ease, LongestAskedMm = field.High + ease };
    }

    /// <summary>Why the plan is refused; for a wrist the lengths that work are said as the brief's field asks for them.</summary>
    private static string Said(LinePlan plan, LengthBrief length)
    {
        if (plan.Refusal is not { } refusal || length.EaseMm is not { } ease)
        {
            return plan.Refusal?.Reason ?? "";
        }

        var wrists = new List<string>();
        if (refusal.NearestShorterMm is { } low)
        {
            wrists.Add(LimitText.AtMost(low - ease, 2));
        }

        if (refusal.NearestLongerMm is { } high)
        {
            wrists.Add(LimitText.AtLeast(high - ease, 2));
        }

        return wrists.Count == 0
            ? refusal.Reason
            : $"{refusal.Reason}; with ease_mm {BriefField.Format(ease)} that is wrist_mm {string.Join(" or ", wrists)}";
    }
}
