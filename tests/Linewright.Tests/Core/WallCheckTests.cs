using Linewright.Checks;
using Linewright.Parts;
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
    public void A_feature_says_who_makes_its_wall_and_the_reading_takes_it_from_there()
    {
        // Written down once more, by name: the strip is rolled, the setter leaves tips and bearings; bores, seats and bars are not polished.
        var piece = CheckedPieces.Yellow.Piece;
        var features = piece.Parts.SelectMany(part => part.Features).ToList();
        Assert.Equal(["tongue strip"], features.Where(feature => feature.Made == MadeBy.Rolling).Select(feature => feature.Name));
        Assert.Equal(["bearing", "claw tip"], features.Where(feature => feature.Made == MadeBy.Bench).Select(feature => feature.Name));
        Assert.Equal(["bar", "tongue strip"], features.Where(feature => feature.PolishedFaces == 0).Select(feature => feature.Name));
        Assert.Equal(
            ["base rail", "rail end", "upper rail", "side", "stop", "claw tip", "stop", "safety wire"],
            features.Where(feature => feature.PolishedFaces == 2).Select(feature => feature.Name));

        var findings = features.Select(feature => new Finding(WallCheck.Rule, Verdict.Pass, "", 1, feature.WallLimitMm, "mm", "", "", ""));
        var readings = WallReading.Of(piece, findings);
        Assert.Equal(features.Select(feature => (feature.Name, feature.Made, feature.PolishedFaces)), readings.Select(wall => (wall.Feature, wall.Made, wall.PolishedFaces)));
        Assert.Equal(["tongue strip"], readings.Where(wall => wall.IsRolled).Select(wall => wall.Feature));
        Assert.Equal(["bearing", "claw tip", "tongue strip"], readings.Except(WallReading.AsCast(readings)).Select(wall => wall.Feature));
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
