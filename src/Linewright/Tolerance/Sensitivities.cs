namespace Linewright.Tolerance;

/// <summary>Which tolerance matters: shares of the length's variance, and what each costs in pieces.</summary>
/// <remarks>
/// The length is a sum, so a term's share is its covariance with the sum over the sum's variance, and the shares add up to all of it.
/// Pieces are counted, which is no sum: there each tolerance is made exact in turn, on the same random numbers.
/// </remarks>
internal static class Sensitivities
{
    /// <summary>A row a tolerance, the one that costs most pieces first, then the one that spreads the length most.</summary>
    public static List<Sensitivity> Of(LineVariation line, LotDraw lot, List<WallSpread> walls)
    {
        var worst = walls.Count == 0 ? null : line.Walls.First(wall => (wall.Part, wall.Feature) == (walls[0].Part, walls[0].Feature));
        var all = worst is null ? 0 : WallVariance(worst, ToleranceSource.TreeScale) + WallVariance(worst, ToleranceSource.TreeFaces)
            + WallVariance(worst, ToleranceSource.Sizes) + WallVariance(worst, ToleranceSource.Finishing) + WallVariance(worst, ToleranceSource.TongueFit);
        var good = Count(fate => (fate & PieceFate.Good) == PieceFate.Good);
        var boreAlone = line.BoreMm >= Checks.JointSpread.LeastClearanceMm;

        return [.. new[]
        {
            Row(ToleranceSource.TreeScale, "process.scale_spread_percent", 100 * line.ScaleSpread, "%", lot.ByScale, good),
            Row(ToleranceSource.TreeFaces, "process.common_spread_um", 1000 * line.FacesSpreadMm, "um", null, With(PieceFate.Bores | PieceFate.SidesWithoutFaces | PieceFate.ClaspWithoutFaces)),
            Row(ToleranceSource.Sizes, "process.tolerance_mm", line.SizeSpreadMm, "mm", lot.BySizes, With(PieceFate.Bores | PieceFate.SidesWithoutSizes | PieceFate.ClaspWithoutSizes)),
            Row(ToleranceSource.JointFit, "process.fit_spread_um", 1000 * line.Joint.BoreMm, "um", lot.ByFit, boreAlone ? With(PieceFate.Sides | PieceFate.Clasp) : 0),
            Row(ToleranceSource.Finishing, "process.finish_spread_um", 1000 * line.LossSpreadMm, "um", null, good),
            Row(ToleranceSource.TongueFit, "", 1000 * line.Clasp.BendSpreadMm, "um", null, With(PieceFate.Free | PieceFate.ClaspWithoutStrip)),
        }.OrderByDescending(row => row.YieldGainPercent).ThenByDescending(row => row.LengthSharePercent)];

        Sensitivity Row(ToleranceSource source, string field, double spread, string unit, double[]? term, int without) => new(
            source, field, spread, unit,
            term is null ? 0 : 100 * ShareOf(term, lot.Length),
            worst is null ? null : 100 * WallVariance(worst, source) / all,
            100.0 * without / lot.Fates.Length,
            100.0 * (without - good) / lot.Fates.Length);

        int With(PieceFate wanted) => Count(fate => (fate & wanted) == wanted);
        int Count(Func<PieceFate, bool> met) => lot.Fates.Count(met);

        // Standard propagation: each term's variance, as the draw adds it up.
        double WallVariance(Checks.WallReading wall, ToleranceSource source) => source switch
        {
            ToleranceSource.TongueFit => wall.IsRolled ? Square(line.Clasp.StripSpreadMm) : 0,
            _ when wall.IsRolled => 0,
            ToleranceSource.TreeScale => Square(line.ScaleSpread * wall.ThicknessMm),
            ToleranceSource.TreeFaces => Square(2 * line.FacesSpreadMm),
            ToleranceSource.Sizes => Square(line.SizeSpreadMm),
            ToleranceSource.Finishing => wall.PolishedFaces * Square(line.LossSpreadMm),
            _ => 0,
        };
    }

    private static double Square(double value) => value * value;

    private static double ShareOf(double[] term, double[] sum)
    {
        double termMean = term.Average(), sumMean = sum.Average(), together = 0, variance = 0;
        for (var i = 0; i < sum.Length; i++)
        {
            together += (term[i] - termMean) * (sum[i] - sumMean);
            variance += (sum[i] - sumMean) * (sum[i] - sumMean);
        }

        return variance > 0 ? together / variance : 0;
    }
}
