using Linewright.Checks;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using static Linewright.Tests.Core.CheckModels;

namespace Linewright.Tests.Core;

public sealed class SettingChecksTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(3)]
    public void A_good_setting_passes(double diameter)
    {
        var findings = new SettingCheck().Run(Of(diameter, "", isMeshed: false), CancellationToken.None).ToList();
        Assert.All(findings, finding => Assert.True(finding.Verdict == Verdict.Pass, finding.ToString()));
        Assert.Equal(4, findings.Single(finding => finding.Rule == "bearing-contact").Measured);
    }

    [Fact]
    public void The_stone_of_a_good_link_has_its_room()
        => Assert.All(new StoneRoomCheck().Run(Of(4), CancellationToken.None), finding => Assert.True(finding.Verdict == Verdict.Pass, finding.ToString()));

    [Theory]
    [InlineData("claw-diameter", "setting.claw_mm=0.6", Verdict.Fail)]
    [InlineData("claw-diameter", "setting.claw_mm=1.3", Verdict.Caution)]
    [InlineData("claw-as-cast", "setting.claw_mm=0.42 process.finish_loss_mm=0.02", Verdict.Fail)]
    [InlineData("claw-cover", "setting.cover_mm=0.15", Verdict.Fail)]
    [InlineData("claw-cover", "setting.cover_mm=0.6", Verdict.Caution)]
    public void A_claw_outside_the_trades_table_is_found(string rule, string settings, Verdict verdict)
        => Assert.Equal(verdict, One(new SettingCheck(), Of(4, settings, isMeshed: false), rule).Verdict);

    [Theory]
    [InlineData(4, "raise link.opening_percent")]
    [InlineData(3, "raise link.stone_gap_mm")]
    public void An_opening_too_narrow_is_found_and_the_cure_names_what_narrows_it(double diameter, string cure)
    {
        // At 4 mm the base is cut as narrow as asked; at 3 mm bar and eye reach in further than that.
        var finding = One(new StoneRoomCheck(), Of(diameter, "link.opening_percent=50", isMeshed: false), "opening");
        Assert.Equal(Verdict.Caution, finding.Verdict);
        Assert.StartsWith(cure, finding.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void A_claw_is_measured_where_it_stands()
    {
        // A post of 1 mm whose axis stands 2.2 from a drum of radius 2: 0.7 of it is left. Calculated.
        var model = Of(4, "", isMeshed: false);
        var form = model.Piece.Link;
        var stone = Shape.Cylinder(2, 0.4).Moved(0, 0, form.GirdleHeightMm);
        double x = 2.2 * Math.Cos(form.ClawAzimuth), y = 2.2 * Math.Sin(form.ClawAzimuth);
        var post = Shape.Rod(new Vec3(x, y, 0), new Vec3(x, y, form.GirdleHeightMm + 0.5), 0.5).Minus(stone);
        var claw = ClawProfile.Read(post, stone, form);
        Assert.Equal(1, claw.DiameterMm, 3);
        Assert.Equal(2, claw.StoneRadiusMm, 3);
        Assert.Equal(0.7, claw.HeelMm, 3);
        Assert.Equal(0.3, claw.CoverMm, 3);
        Assert.InRange(claw.TopMm, form.GirdleHeightMm + 0.47, form.GirdleHeightMm + 0.501);
    }

    [Theory]
    [InlineData(1.2, 0.45, 0.20)] // Common practice: claws and cover by size of stone.
    [InlineData(3.0, 0.75, 0.30)]
    [InlineData(4.0, 0.90, 0.40)]
    [InlineData(6.5, 1.15, 0.65)]
    public void The_table_of_claws_reads_as_the_trade_has_it(double diameter, double leastClaw, double mostCover)
    {
        var row = ClawTable.For(diameter);
        Assert.Equal(leastClaw, row.LeastMm);
        Assert.Equal(mostCover, row.MostCoverMm);
    }
}
