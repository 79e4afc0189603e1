namespace Linewright.Stones;

/// <summary>What the proportions of a brilliant must satisfy for all its facets to exist.</summary>
/// <remarks>Calculated: the body is convex with every facet present when stars are flatter than mains, mains flatter than halves, and the scallops leave a girdle.</remarks>
internal static class BrilliantRules
{
    /// <summary>The first rule broken, with the numbers, or null.</summary>
    public static StoneResult? Refusal(BrilliantProportions p)
        => OutOfRange(p) is { } range ? new StoneResult(StoneStatus.OutOfRange, null, range) : Shape(p);

    private static string? OutOfRange(BrilliantProportions p)
    {
        // Wide limits: they only keep the formulas meaningful. What is a good stone, Assess says.
        foreach (var (name, value, low, high) in (ReadOnlySpan<(string, double, double, double)>)
        [
            ("table", p.TableRatio, 0.2, 0.95),
            ("crown angle in degrees", p.CrownDeg, 5, 70),
            ("pavilion angle in degrees", p.PavilionDeg, 5, 70),
            ("star length", p.StarRatio, 0.05, 0.95),
            ("lower half length", p.LowerHalfRatio, 0.05, 0.95),
            ("girdle", p.GirdleRatio, 0, 0.5),
            ("culet", p.CuletRatio, 0, 0.5),
            ("number of girdle flats", p.GirdleSides, 16, 1024),
        ])
        {
            if (!(value >= low && value <= high))
            {
                return FormattableString.Invariant($"{name} is {value}, possible is {low} to {high}");
            }
        }

        return p.GirdleSides % 16 == 0
            ? null
            : FormattableString.Invariant($"number of girdle flats is {p.GirdleSides}, it must be a multiple of 16");
    }

    private static StoneResult? Shape(BrilliantProportions p)
    {
        var (star, upper, lower) = RoundBrilliant.Slopes(p);
        double starDeg = double.RadiansToDegrees(star), upperDeg = double.RadiansToDegrees(upper), lowerDeg = double.RadiansToDegrees(lower);
        if (!(starDeg > 0 && starDeg < p.CrownDeg))
        {
            return Refuse(StoneStatus.StarsTooSteep, $"stars slope {starDeg:F2} degrees, between 0 and the mains' {p.CrownDeg:F2} is possible");
        }

        if (!(upperDeg > p.CrownDeg))
        {
            return Refuse(StoneStatus.UpperHalvesTooFlat, $"upper halves slope {upperDeg:F2} degrees, not more than the mains' {p.CrownDeg:F2}");
        }

        if (!(lowerDeg > p.PavilionDeg))
        {
            return Refuse(StoneStatus.LowerHalvesTooFlat, $"lower halves slope {lowerDeg:F2} degrees, not more than the mains' {p.PavilionDeg:F2}");
        }

        var scallops = ScallopRatio(upper, lower);
        if (!(p.GirdleRatio > scallops))
        {
            return Refuse(StoneStatus.KnifeEdgeGirdle, $"girdle is {p.GirdleRatio:P2} of the diameter at the mains, the scallops take {scallops:P2}");
        }

        return p.CuletRatio < 1 - p.LowerHalfRatio
            ? null
            : Refuse(StoneStatus.CuletTooLarge, $"culet is {p.CuletRatio:P1} of the diameter, the lower halves leave {1 - p.LowerHalfRatio:P1}");
    }

    /// <summary>How much thinner the girdle is midway along a half facet than at the mains, as a share of the diameter.</summary>
    public static double ScallopRatio(double upperHalfSlope, double lowerHalfSlope)
        => 0.5 * (1 - Math.Cos(Math.PI / 16)) * (Math.Tan(upperHalfSlope) + Math.Tan(lowerHalfSlope));

    private static StoneResult Refuse(StoneStatus status, FormattableString reason)
        => new(status, null, FormattableString.Invariant(reason));
}
