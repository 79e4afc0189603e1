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
    // A clasp a little longer than it must be gives the tongue ease; much longer is stiff on the wrist. Common practice: boxes 8 to 14 mm.
    private const double EaseMm = 0.4, RoomMm = 5.5;

    // Where the joint sets the gap, the layout still needs room to close. Assumed.
    private const double GapRoomMm = 0.12;

    /// <summary>What was asked.</summary>
    public required ResolvedBrief Brief { get; init; }

    /// <summary>What shapes the parts; null where the stone itself cannot be cut.</summary>
    public LineSpec? Spec { get; private init; }

    /// <summary>The joint; null with the spec.</summary>
    public HingeForm? Hinge { get; private init; }

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
        var gap = Math.Max(brief.Link.StoneGapMm, gapMin);
        var gapMax = Math.Max(brief.Link.StoneGapMaxMm, gapMin + GapRoomMm);
        var width = LinkForm.Derive(spec, hinge, d + gap).WidthMm;
        var least = Math.Max(ClaspForm.LeastLength(spec, hinge, width), brief.Clasp.LengthMinMm ?? 0);
        var most = brief.Clasp.LengthMaxMm ?? least + Math.Max(RoomMm, d + gapMax);
        if (most < least)
        {
            return new LineDesign
            {
                Brief = brief,
                Spec = spec,
                Hinge = hinge,
                Refusal = FormattableString.Invariant(
                    $"clasp.length_max_mm is {most:0.0#}, but the shortest clasp whose tongue lasts in {brief.Metal} is {least:0.0#} mm long"),
            };
        }

        var task = new LineTask(
            d, brief.Length.LaidFlatMm ?? 0, gap, gapMin, gapMax,
            least, Math.Min(least + EaseMm, most), most, hinge.HeightMm, hinge.PlayMm,
            brief.Species.WeightOf(spec.Stone.VolumeMm3).Value);
        var plan = brief.Length is { WristMm: { } wrist, EaseMm: { } ease }
            ? LinePlanner.PlanForWrist(task, wrist + ease)
            : LinePlanner.Plan(task);
        return new LineDesign { Brief = brief, Spec = spec, Hinge = hinge, Plan = plan, Refusal = plan.Refusal?.Reason ?? "" };
    }
}
