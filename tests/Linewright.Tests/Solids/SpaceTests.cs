using CsCheck;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

public class SpaceTests
{
    private static readonly Gen<Vec3> Points = Gen.Select(Gen.Double[-9, 9], Gen.Double[-9, 9], Gen.Double[-9, 9], (x, y, z) => new Vec3(x, y, z));

    private static readonly Gen<Pose> Poses = Gen.Select(Points, Points, Gen.Double[-4, 4], (axis, at, angle)
        => Pose.TurnAbout(at, axis.Length > 0.1 ? axis : Vec3.UnitX, angle));

    [Fact]
    public void A_rigid_placement_keeps_distances()
        => Gen.Select(Poses, Points, Points).Sample((pose, a, b)
            => Math.Abs((pose.Point(a) - pose.Point(b)).Length - (a - b).Length) < 1e-9);

    [Fact]
    public void A_placement_followed_by_its_inverse_changes_nothing()
        => Gen.Select(Poses, Points).Sample((pose, a)
            => (pose.Then(pose.Inverse()).Point(a) - a).Length < 1e-9);

    [Fact]
    public void A_turn_about_a_point_leaves_that_point()
        => Gen.Select(Points, Gen.Double[-4, 4]).Sample((at, angle)
            => (Pose.TurnAbout(at, Vec3.UnitY, angle).Point(at) - at).Length < 1e-9);

    [Fact]
    public void A_quarter_turn_about_z_takes_x_to_y()
        => Assert.True((Pose.Turn(Vec3.UnitZ, Math.PI / 2).Point(Vec3.UnitX) - Vec3.UnitY).Length < 1e-12);

    [Fact]
    public void A_mirror_turns_a_right_hand_into_a_left_hand()
    {
        Assert.True(Pose.Mirror(Vec3.UnitX).IsMirrored);
        Assert.False(Pose.Mirror(Vec3.UnitX).Then(Pose.Mirror(Vec3.UnitY)).IsMirrored);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0.0)]
    [InlineData(double.PositiveInfinity)]
    public void The_guard_refuses_what_is_no_length(double value)
        => Assert.Throws<ArgumentOutOfRangeException>(() => Guard.Positive(value));
}
