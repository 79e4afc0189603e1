using Linewright.Parts;
using Linewright.Pictures.Images;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Pictures.Transport;
using Linewright.Solids.Space;
using Linewright.Staging;
using Linewright.Tests.Core;

namespace Linewright.Tests.Staging;

public class StagingTests
{
    private static readonly Lazy<Photographer> Yellow = new(() => new Photographer(CheckedPieces.Yellow));

    [Theory]
    [InlineData(1920, 1080)]
    [InlineData(1080, 1920)]
    [InlineData(800, 800)]
    [InlineData(3000, 600)]
    public void Every_corner_lies_within_the_frame_and_two_sides_are_met(int width, int height)
    {
        var size = new PictureSize(width, height);
        var view = new View(-30, 28, 0.02, 0.08);
        Vec3[] points = [new(0, 0, 0), new(60, 5, 0), new(30, 40, 3), new(-10, 22, 8), new(20, -15, 2)];
        var eye = Framing.Eye(points, view, size);
        var free = 1 - 2 * view.Margin;
        var seen = points.Select(point => Framing.Project(point, eye, view, size)).ToList();
        Assert.All(seen, at => Assert.True(at.Away > 0 && Math.Abs(at.X) <= free + 1e-9 && Math.Abs(at.Y) <= free + 1e-9));

        // As near as can be: either left and right or bottom and top are met, both of them.
        var (left, right) = (seen.Min(at => at.X), seen.Max(at => at.X));
        var (low, high) = (seen.Min(at => at.Y), seen.Max(at => at.Y));
        Assert.True(Math.Min(right, -left) > free - 1e-9 || Math.Min(high, -low) > free - 1e-9);
    }

    [Fact]
    public void A_level_sheet_under_an_even_sky_is_fully_lit()
    {
        // Known: radiance 1 from the whole hemisphere gives irradiance pi, a white sheet's radiance is 1. Source: Lambert's law.
        Assert.Equal(1, GroundIrradiance.Of(Vec3.Zero, [], Surroundings.Even(1)), 1e-9);
    }

    [Fact]
    public void A_square_light_overhead_lights_as_its_form_factor_says()
    {
        // Known: parallel unit squares at distance 1, from the middle of one: (4 / pi) (X / r) atan(X / r) with X = 1/2, r = sqrt(5)/2. Source: view factors, Hottel (1954).
        var light = AreaLight.Facing(new Vec3(0, 0, 100), Vec3.Zero, 100, 100, 6504, 1);
        var side = 0.5 / Math.Sqrt(1.25);
        Assert.Equal(4 / Math.PI * side * Math.Atan(side), GroundIrradiance.Of(Vec3.Zero, [light], Surroundings.Even(0)), 1e-3);
    }

    [Theory]
    [InlineData(SceneKind.Draped)]
    [InlineData(SceneKind.Clasp)]
    [InlineData(SceneKind.Link)]
    [InlineData(SceneKind.Flat)]
    public void A_scene_is_sound_lit_alike_and_sharp_on_its_stone(SceneKind kind)
    {
        var staged = Yellow.Value.Stage(new StageOptions(kind, new PictureSize(320, 180)), TestContext.Current.CancellationToken);
        staged.Scene.Check();
        Assert.Equal(0.95, GroundIrradiance.Of(Middle(staged.Scene), staged.Scene.Lights, staged.Scene.Surroundings), 0.2);
        var forward = (staged.Scene.Lens.Target - staged.Scene.Lens.Eye).Normalised();
        var nearest = staged.Scene.Stones.Min(stone => Math.Abs((stone.Place.Origin - staged.Scene.Lens.Eye).Dot(forward) - staged.Scene.Lens.FocalDistance));
        Assert.True(nearest < CheckedPieces.Yellow.Piece.Stone.DiameterMm);
    }

    [Fact]
    public void The_stone_asked_for_is_the_sharp_one()
    {
        var size = new PictureSize(320, 180);
        StagedScene At(int stone) => Yellow.Value.Stage(new StageOptions(SceneKind.Draped, size) { FocusStone = stone }, TestContext.Current.CancellationToken);
        var (first, last) = (At(1), At(CheckedPieces.Yellow.Piece.Layout.Count));
        Assert.Equal(1, first.FocusStone);
        Assert.True(last.Scene.Lens.FocalDistance > first.Scene.Lens.FocalDistance + 20);
        Assert.Equal(first.Scene.Lens.Eye, last.Scene.Lens.Eye);
    }

    [Fact]
    public void Frames_of_a_turntable_share_their_camera_and_turn_the_piece()
    {
        var order = new PictureOrder(new StageOptions(SceneKind.Link, new PictureSize(160, 160)), RenderQuality.Draft);
        var frames = order.Frames(4).Select(frame => Yellow.Value.Stage(frame.Stage, TestContext.Current.CancellationToken).Scene).ToList();
        Assert.Single(frames.Select(frame => frame.Lens.Eye).Distinct());
        Assert.Equal(-frames[0].Metals[0].Place.AxisX.X, frames[2].Metals[0].Place.AxisX.X, 1e-9);
    }

    [Fact]
    public void Rhodium_plate_shows_rhodium_and_bare_alloys_their_mixture()
    {
        var bare = MetalLook.Of(CheckedPieces.Design(4, "gold-750-white-pd").Brief, PartRole.Link);
        var plated = MetalLook.Of(CheckedPieces.Design(4, "gold-750-white-pd", ",\"finish\":{\"rhodium_um\":0.3}").Brief, PartRole.Link);
        var (red, _, blue) = plated.Metal.NormalColour();
        var (bareRed, _, bareBlue) = bare.Metal.NormalColour();
        Assert.True(blue / red > bareBlue / bareRed, "plate is there to whiten");
        Assert.Equal(MetalTable.Element("Rh").Name, plated.Metal.Name);
    }

    private static Vec3 Middle(Scene scene)
        => (scene.Metals.Aggregate(Vec3.Zero, (sum, metal) => sum + metal.Place.Origin) / scene.Metals.Length) with { Z = 0 };
}
