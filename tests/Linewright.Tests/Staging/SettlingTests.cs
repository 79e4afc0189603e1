using System.Collections.Immutable;
using Linewright.Assembly;
using Linewright.Solids.Space;

namespace Linewright.Tests.Staging;

public class SettlingTests
{
    private static readonly JointFreedom Loose = new(3, 3, 0.5, 0.5, 0, 0);

    [Theory]
    [InlineData(20, 0.5)]
    [InlineData(35, 0.5)]
    [InlineData(60, 1.5)] // Past the edge over which a box of 1 x 2 x 3 tips: its corner stands at atan(3 / 1) = 71.6 degrees.
    public void A_box_put_down_askew_comes_to_lie_flat(double tiltDeg, double _)
    {
        // Known: a box tips back on the face whose corner its middle has not passed. Source: statics, the middle of mass stays within the foot.
        var box = Box(0.5, 1, 1.5, 6);
        var start = Pose.Turn(Vec3.UnitY, double.DegreesToRadians(tiltDeg)).Then(Pose.Move(0, 0, 3));
        start = start.Then(Pose.Move(0, 0, 0.001 - box.LowestMm(start)));
        var result = Settling.Run([box], [], [start]);
        var middle = result.Poses[0].Point(box.Centre).Z;
        var expected = tiltDeg < double.RadiansToDegrees(Math.Atan(1.0 / 3)) ? 1.5 : 0.5;
        Assert.True(result.IsAtRest);
        Assert.Equal(expected, middle, 1e-3);
        Assert.InRange(box.LowestMm(result.Poses[0]), -1e-4, 1e-3);
        _ = _;
    }

    private static RestBody Box(double x, double y, double z, double grams)
    {
        var corners = from i in (double[])[-1, 1] from j in (double[])[-1, 1] from k in (double[])[-1, 1] select new Vec3(i * x, j * y, k * z);
        return new RestBody(grams, Vec3.Zero, Math.Sqrt((x * x + y * y + z * z) * 2 / 9), [.. corners]);
    }

    [Fact]
    public void A_hanging_chain_takes_the_slopes_of_statics()
    {
        // Each link's slope exceeds the one before by the same amount: its weight over the constant pull across.
        // Source: statics of equal, uniform, freely hinged bars between two supports.
        const int count = 8;
        const double length = 3, span = 0.8;
        var rod = new RestBody(1, Vec3.Zero, length / Math.Sqrt(18), [Vec3.Zero]);
        var post = new RestBody(0, Vec3.Zero, 1, [Vec3.Zero]);
        ImmutableArray<RestBody> bodies = [post, .. Enumerable.Repeat(rod, count), post];
        Vec3 left = new(-length / 2, 0, 0), right = new(length / 2, 0, 0);
        var joints = Enumerable.Range(0, count + 1).Select(i => new RestJoint(i, i == 0 ? Vec3.Zero : right, i + 1, i == count ? Vec3.Zero : left, Loose));
        var starts = Zigzag(count, length, span);
        var result = Settling.Run(bodies, [.. joints], starts, hasGround: false);
        var slopes = result.Poses.Skip(1).Take(count).Select(pose => pose.AxisX.Z / pose.AxisX.X).ToList();
        var steps = slopes.Zip(slopes.Skip(1), (a, b) => b - a).ToList();
        TestContext.Current.SendDiagnosticMessage($"steps {result.Steps} rest {result.IsAtRest} err {result.ErrorMm} slopes {string.Join(' ', slopes.Select(s => s.ToString("F4")))} d {string.Join(' ', steps.Select(s => s.ToString("F4")))} E {string.Join(' ', result.EnergyMicroJoule.Select(s => s.ToString("F4")))}");
        Assert.All(steps, step => Assert.Equal(steps.Average(), step, 0.02 * steps.Average()));
        Assert.True(result.IsAtRest);
    }

    private static List<Pose> Zigzag(int count, double length, double span)
    {
        // A tent: half up, half down, its feet at the span asked for.
        var angle = Math.Acos(span);
        var poses = new List<Pose> { Pose.Identity };
        var at = Vec3.Zero;
        for (var i = 0; i < count; i++)
        {
            var frame = Pose.Turn(Vec3.UnitY, i < count / 2 ? angle : -angle);
            poses.Add(frame with { Origin = at + frame.AxisX * (length / 2) });
            at += frame.AxisX * length;
        }

        poses.Add(Pose.Move(at));
        return poses;
    }
}
