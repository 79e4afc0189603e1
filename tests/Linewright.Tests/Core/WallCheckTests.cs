using Linewright.Checks;
using static Linewright.Tests.Core.CheckModels;

namespace Linewright.Tests.Core;

public sealed class WallCheckTests
{
    [Fact]
    public void Every_feature_of_a_link_is_measured()
    {
        var model = Of(4);
        var walls = Find(new WallCheck(), model, "smallest-wall").Where(finding => finding.Where.StartsWith("link: ", StringComparison.Ordinal)).ToList();
        Assert.Equal(model.Piece.Parts[0].Features.Length, walls.Count);
        Assert.Equal(Verdict.Pass, Assert.Single(walls, wall => wall.Where.Contains("eye", StringComparison.Ordinal)).Verdict);
        Assert.Equal(Verdict.Pass, Assert.Single(walls, wall => wall.Where.Contains("bar", StringComparison.Ordinal)).Verdict);
        Assert.All(walls, wall => Assert.True(wall.Measured > 0.02, wall.ToString()));
    }

    [Fact]
    public void An_eye_too_thin_for_the_metal_fails()
    {
        var eye = Find(new WallCheck(), Of(4, Tight), "smallest-wall")
            .Single(finding => finding.Where.StartsWith("link: eye", StringComparison.Ordinal));
        Assert.Equal(Verdict.Fail, eye.Verdict);
        Assert.InRange(eye.Measured!.Value, 0.35, 0.405);
        Assert.Equal("raise hinge.eye_wall_mm", eye.Cure);
    }

    [Fact]
    public void A_part_without_a_surface_fails()
        => Assert.All(
            Find(new WallCheck(), Of(4, "", isMeshed: false), "smallest-wall"),
            finding => Assert.Equal(Verdict.Fail, finding.Verdict));
}
