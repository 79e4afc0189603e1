using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Linewright.Checks;

/// <summary>One thing that a check measured on the piece: what, where, against which limit, and what to change.</summary>
/// <param name="Rule">Name of the check, lower case with hyphens: smallest-wall.</param>
/// <param name="Verdict">Pass, caution or fail.</param>
/// <param name="Where">The part or the place in the line, in the trade's words.</param>
/// <param name="Measured">What was measured, in <paramref name="Unit"/>; null where a check has no number.</param>
/// <param name="Limit">What it is held against, in the same unit; null where a check has no number.</param>
/// <param name="Unit">mm, deg, g, %, N, MPa, ...; empty for counts and notes.</param>
/// <param name="Source">Where the limit comes from.</param>
/// <param name="Mark">How far the limit is to be trusted, one of <see cref="Materials.Marks"/>.</param>
/// <param name="Cure">What to change; empty where nothing need be.</param>
public sealed record Finding(
    string Rule,
    Verdict Verdict,
    string Where,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] double? Measured,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] double? Limit,
    string Unit,
    string Source,
    string Mark,
    string Cure)
{
    /// <summary>Where on the parts it was measured, for whoever draws it; empty where a check names no point. Not in the report.</summary>
    [JsonIgnore]
    public ImmutableArray<Spot> Spots { get; init; } = [];
}
