using Linewright.Brief;
using Linewright.Materials;
using Linewright.Stones;

namespace Linewright.Parts;

/// <summary>Turns a resolved brief into what shapes the parts: stone, choices and the limits of the metal.</summary>
internal static class LineSpecs
{
    /// <summary>A tongue is pressed some ten thousand times in its life: this share of the yield strain takes no set. Common practice.</summary>
    internal const double StrainShare = 0.7;

    /// <summary>The spec, or why the stone cannot be cut.</summary>
    public static (LineSpec? Spec, string Reason) Of(ResolvedBrief brief)
    {
        var asked = brief.Stone;
        var cut = RoundBrilliant.Cut(asked.DiameterMm, new BrilliantProportions(
            asked.TablePercent / 100, asked.CrownDeg, asked.PavilionDeg, asked.StarPercent / 100,
            asked.LowerHalfPercent / 100, asked.GirdlePercent / 100, asked.CuletPercent / 100, asked.GirdleFacets));
        if (cut.Stone is not { } stone)
        {
            return (null, cut.Reason);
        }

        var alloy = brief.Alloy;
        var limits = MaterialTables.ProcessOf(alloy);
        return (new LineSpec
        {
            Stone = stone,
            GapMinMm = brief.Link.StoneGapMinMm,
            ClawMm = brief.Setting.ClawMm,
            SeatFraction = brief.Setting.SeatFraction,
            CoverMm = brief.Setting.CoverMm,
            TipRiseMm = brief.Setting.TipRiseMm,
            CuletClearanceMm = brief.Setting.CuletClearanceMm,
            Hinge = brief.Hinge.Kind,
            BarMm = brief.Hinge.BarMm,
            EyeWallMm = brief.Hinge.EyeWallMm,
            EyeWidthMm = brief.Hinge.EyeWidthMm,
            CheekMm = brief.Hinge.CheekMm,
            DiametralClearanceMm = brief.Hinge.DiametralClearanceMm,
            SideClearanceMm = brief.Hinge.SideClearanceMm,
            ReliefMm = brief.Hinge.ReliefMm,
            OutwardStop = double.DegreesToRadians(brief.Hinge.OutwardStopDeg),
            RailMm = brief.Link.RailMm,
            OpeningRatio = brief.Link.OpeningPercent / 100,
            EdgeMm = brief.Link.EdgeRadiusMm,
            FilletMm = brief.Link.FilletMm,
            ClaspWallMm = ClaspWallMm(brief, limits.MinimumWallMm),
            TongueMm = brief.Clasp.TongueMm,
            PressMm = brief.Clasp.PressMm,
            SidePlayMm = brief.Clasp.SidePlayMm,
            ClaspWidthRatio = brief.Clasp.WidthRatio,
            Safety = brief.Clasp.Safety,
            FinishLossMm = brief.Chain.AllowanceMm(FaceKind.Polished),
            WallLimitMm = limits.MinimumWallMm,
            WallReserveMm = brief.Process.WallReserveMm,
            KnuckleLimitMm = limits.MinimumKnuckleWallMm,
            CastBarLimitMm = limits.MinimumCastBarMm,
            CastYieldMPa = alloy.YieldMPa(Temper.Annealed),
            DrawnYieldMPa = alloy.YieldMPa(Temper.Hard),
            ModulusMPa = alloy.ModulusMPa,
            TongueStrainLimit = StrainShare * alloy.YieldMPa(brief.Clasp.Temper) / alloy.ModulusMPa,
        }, "");
    }

    // The brief's wall has its default filled in and cannot be told from one that was asked for; a reserve lifts both.
    private static double ClaspWallMm(ResolvedBrief brief, double least) => brief.Process.WallReserveMm > 0
        ? Math.Max(brief.Clasp.WallMm, least + BriefDefaults.ClaspSpareMm + brief.Process.WallReserveMm)
        : brief.Clasp.WallMm;
}
