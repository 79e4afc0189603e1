using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Solids.Space;

namespace Linewright.Tests.Staging;

public class SettlingTests
{
    // Half of 1 x 2 x 3 mm.
    private const double HalfX = 0.5, HalfY = 1, HalfZ = 1.5;

    [Theory]
    [InlineData(5, HalfZ)] // Known: a box falls back on the face over whose edge its middle has not passed, at atan(1 / 3) = 18.43 degrees. Source: statics.
    [InlineData(18, HalfZ)]
    [InlineData(20, HalfX)]
    [InlineData(60, HalfX)]
    public void A_box_put_down_askew_comes_to_lie_on_the_face_that_statics_says(double tiltDeg, double height)
    {
        var box = Box();
        var result = Settling.Run([box], [], [OnItsEdge(box, tiltDeg)], stop: TestContext.Current.CancellationToken);
        Assert.True(result.IsAtRest, result.ToString());
        Assert.Equal(height, result.Poses[0].Point(box.Centre).Z, 1e-3);
        Assert.Equal(0, box.LowestMm(result.Poses[0]), 1e-6);
    }

    [Fact]
    public void What_settles_loses_energy_stage_by_stage()
    {
        var box = Box();
        var energies = Settling.Run([box], [], [OnItsEdge(box, 60)], stop: TestContext.Current.CancellationToken).EnergyMicroJoule;
        Assert.True(energies[^1] < 0.5 * energies[0]);

        // A stage may lift what the one before had let sink into its joints, by no more than that.
        Assert.All(energies.Zip(energies.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1e-6 * energies[0]));

        // Grams, mm and m/s2 give microjoules: 6 g, its middle 0.5 mm up. Source: E = m g h.
        Assert.Equal(6 * 9.80665 * 0.5, energies[^1], 1e-3);
    }

    [Theory]
    [InlineData(4, 0.02)]
    [InlineData(8, 0.04)]
    public void A_hanging_chain_takes_the_slopes_of_statics(int count, double tolerance)
    {
        // Known: the slopes of equal bars that hang freely between two pegs grow by equal steps, each the weight of a bar
        // over the pull across, which is the same everywhere. Source: statics of the funicular polygon, Varignon (1725).
        var result = Settling.Run(Bars(count), [.. Hinges(count)], Tent(count), hasGround: false, stop: TestContext.Current.CancellationToken);
        Assert.True(result.IsAtRest);
        Assert.True(result.ErrorMm < 1e-4);
        var slopes = result.Poses.Skip(1).Take(count).Select(pose => pose.AxisX.Z / pose.AxisX.X).ToList();
        var step = (slopes[^1] - slopes[0]) / (count - 1);
        Assert.All(slopes.Zip(slopes.Skip(1)), pair => Assert.Equal(step, pair.Second - pair.First, tolerance * step));
        Assert.Equal(0, slopes[0] + slopes[^1], 1e-3);
    }

    [Fact]
    public void The_same_start_gives_the_same_rest_bit_for_bit()
    {
        var box = Box();
        SettleResult Run() => Settling.Run([box], [], [OnItsEdge(box, 35)], stop: TestContext.Current.CancellationToken);
        Assert.Equal(Run().Poses, Run().Poses);
    }

    [Fact]
    public void A_turn_is_parted_into_hinge_sideways_and_twist()
    {
        var hinge = Pose.Turn(Vec3.UnitY, 0.5);
        Assert.Equal((0.5, 0.0, 0.0), Rounded(JointLie.Turns(Pose.Identity, hinge)));
        Assert.Equal((0.0, 0.03, 0.0), Rounded(JointLie.Turns(Pose.Identity, Pose.Turn(Vec3.UnitZ, 0.03))));
        Assert.Equal((0.0, 0.0, -0.04), Rounded(JointLie.Turns(Pose.Identity, Pose.Turn(Vec3.UnitX, -0.04))));

        // First the hinge, then sideways in the frame of the piece before.
        Assert.Equal((0.5, 0.03, 0.0), Rounded(JointLie.Turns(Pose.Identity, hinge.Then(Pose.Turn(Vec3.UnitZ, 0.03)))));
        static (double, double, double) Rounded((double Hinge, double Sideways, double Twist) turns)
            => (Math.Round(turns.Hinge, 5), Math.Round(turns.Sideways, 5), Math.Round(turns.Twist, 5));
    }

    private static RestBody Box()
    {
        var corners = from x in Both(HalfX) from y in Both(HalfY) from z in Both(HalfZ) select new Vec3(x, y, z);
        return new RestBody(6, Vec3.Zero, Math.Sqrt((HalfX * HalfX + HalfY * HalfY + HalfZ * HalfZ) * 2 / 9), [.. corners]);
        static double[] Both(double half) => [-half, half];
    }

    private static Pose OnItsEdge(RestBody box, double tiltDeg)
    {
        var tilted = Pose.Turn(Vec3.UnitY, double.DegreesToRadians(tiltDeg));
        return tilted.Then(Pose.Move(0, 0, 0.001 - box.LowestMm(tilted)));
    }

    // Bars of 3 mm between two pegs that are held.
    private const double BarMm = 3;

    private static ImmutableArray<RestBody> Bars(int count)
    {
        var bar = new RestBody(1, Vec3.Zero, BarMm / Math.Sqrt(18), [Vec3.Zero]);
        var peg = new RestBody(0, Vec3.Zero, 1, [Vec3.Zero]);
        return [peg, .. Enumerable.Repeat(bar, count), peg];
    }

    private static IEnumerable<RestJoint> Hinges(int count)
    {
        var free = new JointFreedom(3, 3, 0.5, 0.5, 0, 0);
        Vec3 left = new(-BarMm / 2, 0, 0), right = new(BarMm / 2, 0, 0);
        return Enumerable.Range(0, count + 1)
            .Select(i => new RestJoint(i, i == 0 ? Vec3.Zero : right, i + 1, i == count ? Vec3.Zero : left, free));
    }

    /// <summary>Half of the bars up, half down, pegs at 0.8 of the chain's length.</summary>
    private static List<Pose> Tent(int count)
    {
        List<Pose> poses = [Pose.Identity];
        var at = Vec3.Zero;
        for (var i = 0; i < count; i++)
        {
            var frame = Pose.Turn(Vec3.UnitY, (i < count / 2 ? 1 : -1) * Math.Acos(0.8));
            poses.Add(frame with { Origin = at + frame.AxisX * (BarMm / 2) });
            at += frame.AxisX * BarMm;
        }

        poses.Add(Pose.Move(at));
        return poses;
    }
}
