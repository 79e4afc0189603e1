using Linewright.Brief;
using Linewright.Parts;

namespace Linewright.Tests.Core;

public class HingeRuleTests
{
    [Theory]
    [InlineData(1.5, 200)]
    [InlineData(1.93, 200)]
    [InlineData(1.44, 430)]
    public void The_bar_bears_the_pull_and_one_a_hundredth_thinner_does_not(double spanMm, double yieldMPa)
    {
        // Independent: the handbook's stress of a bar on two supports, rather than the formula turned round.
        var bar = HingeRule.StrongBarMm(spanMm, yieldMPa);
        double Bears(double mm) => yieldMPa / Beam.SupportedStressMPa(1, spanMm, mm, Beam.RoundMm4(mm));
        Assert.True(Bears(bar) >= HingeRule.PullN);
        Assert.True(Bears(bar - 0.011) < HingeRule.PullN);
    }

    [Fact]
    public void An_eye_wide_enough_wags_by_no_more_than_feels_firm()
    {
        // Calculated: a hole 0.09 wider than its bar tips by 0.09 over the eye's width; 0.09 / tan 3 deg = 1.717.
        var width = HingeRule.FirmWidthMm(0.09, HingeKind.EyeOverBar);
        Assert.InRange(width, 1.717, 1.717 * 1.03 + 0.01);
        Assert.True(double.RadiansToDegrees(Math.Atan(0.09 / width)) <= HingeRule.FirmDeg);
        Assert.True(HingeRule.FirmWidthMm(0.065, HingeKind.PinnedKnuckles) < width);
    }
}
