using System.Collections.Immutable;
using System.Globalization;
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

    /// <summary>What was measured and its limit, for a person: 40.4 %, limit 55 %; empty where nothing was measured.</summary>
    /// <remarks>Lengths to a thousandth, shares and angles to a tenth, all else to a hundredth; further where the two would else look alike and are not.</remarks>
    public string Figures()
    {
        if (Measured is not { } measured)
        {
            return "";
        }

        if (Limit is not { } limit)
        {
            return Said(measured, Places);
        }

        var places = Places;
        while (places < 6 && measured != limit && Said(measured, places) == Said(limit, places))
        {
            places++;
        }

        return $"{Said(measured, places)}, limit {Said(limit, places)}";
    }

    private int Places => Unit switch { "mm" => 3, "%" or "deg" => 1, _ => 2 };

    private string Said(double value, int places)
        => value.ToString("0." + new string('#', places), CultureInfo.InvariantCulture) + (Unit.Length > 0 ? " " + Unit : "");
}
