using Linewright.Assembly;
using Linewright.Checks;
using Linewright.Parts;
using Linewright.Solids.Lanes;
using Linewright.Solids.Measures;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;
using static Linewright.Tests.Core.CheckModels;

namespace Linewright.Tests.Core;

/// <summary>The quick search for an angle of contact against a slow one that feels every point of a dense surface at every pose.</summary>
public sealed class HingeAngleTests
{
    // What the check promises.
    private const double WithinDeg = 0.1;

    // Four times as close as the joint's own probes: between two a surface of 0.3 mm radius stands out by a micrometre.
    private const double DenseMm = 0.025;

    private const double StepDeg = 2;

    [Theory]
    [InlineData(3, 'y', 75)]
    [InlineData(3, 'y', -40)]
    [InlineData(3, 'z', 15)]
    [InlineData(4, 'y', -40)]
    [InlineData(2, 'x', -15)] // A drawn pin.
    public void The_quick_angle_is_the_slow_one(double diameter, char axisName, double mostDeg)
    {
        var model = Of(diameter);
        var joint = Joint.Of(model);
        var axis = axisName == 'x' ? Vec3.UnitX : axisName == 'y' ? Vec3.UnitY : Vec3.UnitZ;
        var quick = joint.Turn(joint.SharedMm, axis, double.DegreesToRadians(mostDeg));
        Assert.True(quick.Touches);
        Assert.NotEqual("stone", quick.Nearest.NameA);
        Assert.NotEqual("stone", quick.Nearest.NameB);

        // Free until shortly before, in contact shortly after.
        var (met, way) = (Math.Abs(double.RadiansToDegrees(quick.Angle)), Math.Sign(mostDeg));
        var slow = new Slow(model, joint, deg => joint.Next(joint.SharedMm).Then(
            Pose.TurnAbout(model.Piece.Link.NextBarAxis - new Vec3(joint.SharedMm, 0, 0), axis, double.DegreesToRadians(way * deg))));
        for (var deg = 0.0; deg < met - WithinDeg; deg += StepDeg)
        {
            Assert.True(slow.Least(deg) > 0, FormattableString.Invariant($"in contact at {deg}, quick {met}"));
        }

        Assert.True(slow.Least(met - WithinDeg) > 0, FormattableString.Invariant($"in contact before {met}"));
        Assert.True(slow.Least(met + WithinDeg) < 0, FormattableString.Invariant($"free after {met}"));
    }

    /// <summary>Metal only: both links' halves at the hinge and the pin, each point of each felt by the whole of the other.</summary>
    private sealed class Slow(PieceModel model, Joint joint, Func<double, Pose> next)
    {
        private readonly Arena arena = new();
        private readonly List<(Solid Solid, Vec3[] Points)> rest = Dense(model, joint.EyeSide, p => p.X > 0), moved = Dense(model, joint.BarSide, p => p.X < 0);

        public double Least(double deg)
        {
            var pose = next(deg);
            var back = pose.Inverse();
            return rest.SelectMany(a => moved.Select(b => Math.Min(Feel(a.Points, back, b.Solid), Feel(b.Points, pose, a.Solid)))).Min();
        }

        private static List<(Solid Solid, Vec3[] Points)> Dense(PieceModel model, IEnumerable<Body> bodies, Func<Vec3, bool> where)
            => [.. bodies.Where(body => body.Name != "stone").Select(body =>
            {
                var isPin = body.Name == "pin";
                var mesh = model.MeshOf(isPin ? PartRole.Pin : PartRole.Link).Mesh;
                mesh = isPin ? mesh.Moved(Pose.Move(model.Piece.Link.BarAxis)) : mesh;
                var probes = ProbeSurface.Of(body.Solid, mesh, DenseMm, p => isPin || where(p));
                return (body.Solid, Enumerable.Range(0, probes.Count).Select(probes.Point).ToArray());
            })];

        private double Feel(Vec3[] points, Pose into, Solid other)
        {
            const int most = 1024;
            Span<float> x = stackalloc float[most], y = stackalloc float[most], z = stackalloc float[most], d = stackalloc float[most];
            var least = double.PositiveInfinity;
            for (var start = 0; start < points.Length; start += most)
            {
                for (var i = 0; i < most; i++)
                {
                    var p = into.Point(points[Math.Min(start + i, points.Length - 1)]);
                    (x[i], y[i], z[i]) = ((float)p.X, (float)p.Y, (float)p.Z);
                }

                other.Distances(x, y, z, d, arena);
                foreach (var distance in d)
                {
                    least = Math.Min(least, distance);
                }
            }

            return least;
        }
    }
}
