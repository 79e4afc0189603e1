using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>Lets rigid bodies, joined by hinges with play, sink onto a level ground until they rest.</summary>
/// <remarks>
/// Every step all bodies sink by the same small way, then are put back where joints and ground allow, each by its share of
/// mass and gyration. Nothing keeps its speed, so nothing swings: the way is that of a line let down slowly. Where the
/// sinking is undone exactly, the corrections are the forces of rest: weights, ground and joints balance. The step is
/// cut down stage by stage, and with it what the joints give way. Source: position-based dynamics, Mueller,
/// Heidelberger, Hennix and Ratcliff (2007), and its rigid bodies, Mueller et al. (2020). The order of work is fixed and no
/// clock is read: the same start gives the same rest, bit for bit. Bodies see the ground and their joints, not each other;
/// whoever asks measures the pose afterwards. Derivation: docs/notes/staging.md.
/// Longer than other files: joints, ground and weights are put right in one loop over the same arrays, tens of thousands of times.
/// </remarks>
public sealed class Settling
{
    /// <summary>Standard gravity, m/s2. Source: third General Conference on Weights and Measures (1901).</summary>
    public const double Gravity = 9.80665;

    // Metal on paper or stone. Assumed: 0.2 to 0.4; enough to keep a ring that lies on its side from creeping.
    private const double Friction = 0.3;

    // The first sinking, and the last: with it the joints give by a few tenths of a micrometre.
    private const double FirstMm = 0.02, LastMm = 2e-4, Finer = 0.4;

    // Where some steps together move nothing by more than this share of their sinking, the stage is done. Corners that take
    // turns in carrying a body shake it by less than a step's sinking; that is no way made.
    private const double RestShare = 0.005;
    private const int Together = 8;

    private const int Sweeps = 8, MostStepsAStage = 25 * Together, MostPolishing = 4000;

    // Corners this near over the ground may touch it within a step.
    private const double NearMm = 0.25;

    // A hundredth of a micrometre: joints are as good as exact.
    private const double ExactMm = 1e-5;

    private readonly ImmutableArray<RestBody> bodies;
    private readonly ImmutableArray<RestJoint> joints;
    private readonly bool hasGround;
    private readonly Pose[] poses;
    private readonly Pose[] before;
    private readonly Pose[] earlier;
    private readonly double[] hingeBefore;
    private readonly double[] rubbed;
    private readonly double[] freedom;
    private readonly double[] turnFreedom;
    private readonly int[][] near;

    private Settling(ImmutableArray<RestBody> bodies, ImmutableArray<RestJoint> joints, IReadOnlyList<Pose> start, bool hasGround)
    {
        (this.bodies, this.joints, this.hasGround) = (bodies, joints, hasGround);
        poses = [.. start];
        before = [.. start];
        earlier = [.. start];
        hingeBefore = new double[joints.Length];
        rubbed = new double[joints.Length];
        freedom = [.. bodies.Select(body => body.IsHeld ? 0 : 1 / body.Grams)];
        turnFreedom = [.. bodies.Select(body => body.IsHeld ? 0 : 1 / (body.Grams * body.GyrationMm * body.GyrationMm))];
        near = [.. bodies.Select(_ => Array.Empty<int>())];
    }

    /// <summary>Settles bodies from where they are.</summary>
    /// <param name="bodies">The bodies.</param>
    /// <param name="joints">The hinges between them.</param>
    /// <param name="start">A pose each; joints within their freedom and nothing under the ground, or nearly.</param>
    /// <param name="hasGround">Whether there is a level ground at z = 0; without it something must be held.</param>
    /// <param name="stop">Asks to stop.</param>
    public static SettleResult Run(
        ImmutableArray<RestBody> bodies, ImmutableArray<RestJoint> joints, IReadOnlyList<Pose> start, bool hasGround = true, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(start);
        Guard.InRange(start.Count, bodies.Length, bodies.Length, nameof(start));
        return new Settling(bodies, joints, start, hasGround).Run(stop);
    }

    private SettleResult Run(CancellationToken stop)
    {
        Polish();
        var energies = ImmutableArray.CreateBuilder<double>();
        energies.Add(Energy());
        var (steps, given) = (0, 0.0);
        var weight = bodies.Sum(body => Math.Max(0, body.Grams)) * Gravity;
        for (var sink = FirstMm; sink > LastMm; sink *= Finer)
        {
            var rests = false;
            for (var step = 0; step < MostStepsAStage && !rests; step += Together, steps += Together)
            {
                stop.ThrowIfCancellationRequested();
                poses.CopyTo(earlier, 0);
                var high = Energy();
                for (var i = 0; i < Together; i++)
                {
                    Step(sink);
                }

                rests = Moved() < RestShare * Together * sink;
                given = (high - Energy()) / (weight * sink * Together);
            }

            energies.Add(Energy());
        }

        Polish();
        energies.Add(Energy());
        return new SettleResult([.. poses], energies.ToImmutable(), steps, given, Error());
    }

    /// <summary>Sinks all and puts all back.</summary>
    private void Step(double sink)
    {
        Begin();
        for (var i = 0; i < poses.Length; i++)
        {
            if (!bodies[i].IsHeld)
            {
                poses[i] = poses[i] with { Origin = poses[i].Origin - new Vec3(0, 0, sink) };
            }
        }

        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            Sweep(sweep % 2 == 1, sink);
        }

        for (var i = 0; i < poses.Length; i++)
        {
            poses[i] = Squared(poses[i]);
        }
    }

    /// <summary>How far anything has moved since it was last noted, mm.</summary>
    private double Moved()
    {
        var moved = 0.0;
        for (var i = 0; i < poses.Length; i++)
        {
            var arm = bodies[i].GyrationMm;
            moved = Math.Max(moved, (Middle(i) - earlier[i].Point(bodies[i].Centre)).Length);
            moved = Math.Max(moved, arm * (poses[i].AxisX - earlier[i].AxisX).Length);
            moved = Math.Max(moved, arm * (poses[i].AxisY - earlier[i].AxisY).Length);
        }

        return moved;
    }

    private void Begin()
    {
        poses.CopyTo(before, 0);
        FindNear();
        Array.Clear(rubbed);
        for (var k = 0; k < joints.Length; k++)
        {
            hingeBefore[k] = JointLie.Turns(poses[joints[k].Eye], poses[joints[k].Bar]).Hinge;
        }
    }

    private void Sweep(bool isBackwards, double sink)
    {
        for (var k = 0; k < joints.Length; k++)
        {
            var joint = isBackwards ? joints.Length - 1 - k : k;
            Join(joints[joint]);
            Rub(joint, sink);
        }

        for (var k = 0; hasGround && k < poses.Length; k++)
        {
            Support(isBackwards ? poses.Length - 1 - k : k);
        }
    }

    /// <summary>Brings two neighbours back within the joint's freedom.</summary>
    private void Join(RestJoint joint)
    {
        var free = joint.Freedom;
        Pose eye = poses[joint.Eye], bar = poses[joint.Bar];
        var lie = JointLie.Of(eye, joint.EyeCentre, bar, joint.BarCentre);
        var over = lie.Hinge - Math.Clamp(lie.Hinge, -free.Outward, free.Inward);
        if (over != 0)
        {
            Turn(joint, eye.AxisY, -over);
        }

        // Shares of each freedom; what they have too much together is taken from the largest first.
        double sideways = Share(lie.Sideways, free.Sideways), twist = Share(lie.Twist, free.Twist);
        double radial = Share(lie.RadialMm, free.PlayMm), across = Share(lie.AcrossMm, free.SidePlayMm);
        var excess = Excess(sideways, twist, radial, across);
        if (!(excess > 0))
        {
            return;
        }

        Turn(joint, eye.AxisZ, -Back(lie.Sideways, sideways, excess));
        Turn(joint, eye.AxisX, -Back(lie.Twist, twist, excess));
        if (Back(lie.RadialMm, radial, excess) is > 0 and var back)
        {
            Shift(joint, (eye.AxisX * lie.AlongMm + eye.AxisZ * lie.UpMm).Normalised(), -back);
        }

        Shift(joint, eye.AxisY, -Back(lie.AcrossMm, across, excess));
    }

    /// <summary>Keeps a hinge from turning as far as its rubbing can: the weight of the lighter body on the bar's radius.</summary>
    private void Rub(int index, double sink)
    {
        var joint = joints[index];
        var both = turnFreedom[joint.Eye] + turnFreedom[joint.Bar];
        if (joint.RubMm <= 0 || both == 0)
        {
            return;
        }

        // The moment of friction times the sinking is an impulse of turning; both bodies together answer by their freedom.
        var grams = 1 / Math.Max(freedom[joint.Eye], freedom[joint.Bar]);
        var most = Friction * grams * joint.RubMm * sink * both;
        var turned = JointLie.Turns(poses[joint.Eye], poses[joint.Bar]).Hinge - hingeBefore[index];
        var wanted = Math.Clamp(rubbed[index] - turned, -most, most);
        Turn(joint, poses[joint.Eye].AxisY, wanted - rubbed[index]);
        rubbed[index] = wanted;
    }

    private static double Share(double value, double limit) => limit > 0 ? Math.Abs(value) / limit : value == 0 ? 0 : double.PositiveInfinity;

    /// <summary>How much of a value goes, so that its share falls by the excess, to nothing at most.</summary>
    private static double Back(double value, double share, double excess)
        => share <= 0 ? 0 : double.IsPositiveInfinity(share) ? value : value * Math.Min(1, excess / share);

    /// <summary>What each share must give so that those left add up to one.</summary>
    /// <remarks>Source: the nearest point on a cross-polytope, by the shares in falling order; a freedom of nothing takes no part.</remarks>
    private static double Excess(double a, double b, double c, double d)
    {
        Span<double> shares = [Finite(a), Finite(b), Finite(c), Finite(d)];
        var hasFixed = double.IsPositiveInfinity(a) || double.IsPositiveInfinity(b) || double.IsPositiveInfinity(c) || double.IsPositiveInfinity(d);
        shares.Sort();
        var (sum, excess) = (0.0, 0.0);
        for (var i = 0; i < shares.Length; i++)
        {
            sum += shares[^(i + 1)];
            if (sum - 1 > shares[^(i + 1)] * (i + 1))
            {
                break;
            }

            excess = (sum - 1) / (i + 1);
        }

        return excess > 0 ? excess : hasFixed ? double.Epsilon : 0;

        static double Finite(double share) => double.IsPositiveInfinity(share) ? 0 : share;
    }

    /// <summary>Turns the body with the bar against the one with the eye, both by their share.</summary>
    private void Turn(RestJoint joint, Vec3 axis, double angle)
    {
        var both = turnFreedom[joint.Eye] + turnFreedom[joint.Bar];
        if (angle == 0 || both == 0)
        {
            return;
        }

        TurnBody(joint.Eye, axis * (-angle * turnFreedom[joint.Eye] / both));
        TurnBody(joint.Bar, axis * (angle * turnFreedom[joint.Bar] / both));
    }

    /// <summary>Moves the bar against its eye along a direction, both bodies moved and turned by their share.</summary>
    private void Shift(RestJoint joint, Vec3 way, double by)
    {
        if (by == 0)
        {
            return;
        }

        Vec3 atEye = poses[joint.Eye].Point(joint.EyeCentre), atBar = poses[joint.Bar].Point(joint.BarCentre);
        Vec3 eyeArm = (atEye - Middle(joint.Eye)).Cross(way), barArm = (atBar - Middle(joint.Bar)).Cross(way);
        var both = Ease(joint.Eye, eyeArm) + Ease(joint.Bar, barArm);
        if (both > 0)
        {
            Push(joint.Eye, way, eyeArm, -by / both);
            Push(joint.Bar, way, barArm, by / both);
        }
    }

    /// <summary>Lifts a body's corners out of the ground; what touches does not slide unless pushed hard.</summary>
    private void Support(int body)
    {
        if (bodies[body].IsHeld)
        {
            return;
        }

        foreach (var corner in near[body])
        {
            var inBody = bodies[body].Corners[corner];
            var at = poses[body].Point(inBody);
            if (at.Z >= 0)
            {
                continue;
            }

            var arm = (at - Middle(body)).Cross(Vec3.UnitZ);
            Push(body, Vec3.UnitZ, arm, -at.Z / Ease(body, arm));
            var slid = poses[body].Point(inBody) - before[body].Point(inBody);
            slid = slid with { Z = 0 };
            if (slid.Length is > 0 and var way)
            {
                var back = -slid / way;
                arm = (poses[body].Point(inBody) - Middle(body)).Cross(back);
                Push(body, back, arm, Math.Min(way, -at.Z * Friction) / Ease(body, arm));
            }
        }
    }

    private double Ease(int body, Vec3 arm) => freedom[body] + turnFreedom[body] * arm.Dot(arm);

    private void Push(int body, Vec3 way, Vec3 arm, double impulse)
    {
        if (freedom[body] > 0)
        {
            TurnBody(body, arm * (impulse * turnFreedom[body]));
            poses[body] = poses[body] with { Origin = poses[body].Origin + way * (impulse * freedom[body]) };
        }
    }

    private void TurnBody(int body, Vec3 turn)
    {
        if (turn.Length is > 0 and var angle)
        {
            poses[body] = poses[body].Then(Pose.TurnAbout(Middle(body), turn, angle));
        }
    }

    private Vec3 Middle(int body) => poses[body].Point(bodies[body].Centre);

    private void FindNear()
    {
        var found = new List<int>();
        for (var i = 0; i < poses.Length; i++)
        {
            found.Clear();
            var corners = bodies[i].Corners;
            for (var c = 0; c < corners.Length; c++)
            {
                if (poses[i].Point(corners[c]).Z < NearMm)
                {
                    found.Add(c);
                }
            }

            near[i] = [.. found];
        }
    }

    /// <summary>Puts all back where joints and ground allow, with no sinking.</summary>
    private void Polish()
    {
        for (var i = 0; i < MostPolishing && Error() > ExactMm; i++)
        {
            Begin();
            Sweep(i % 2 == 1, LastMm);
        }

        for (var i = 0; i < poses.Length; i++)
        {
            poses[i] = Squared(poses[i]);
        }
    }

    private double Error()
    {
        var worst = 0.0;
        foreach (var joint in joints)
        {
            var free = joint.Freedom;
            var lie = JointLie.Of(poses[joint.Eye], joint.EyeCentre, poses[joint.Bar], joint.BarCentre);
            double sideways = Share(lie.Sideways, free.Sideways), twist = Share(lie.Twist, free.Twist);
            double radial = Share(lie.RadialMm, free.PlayMm), across = Share(lie.AcrossMm, free.SidePlayMm);
            var excess = Excess(sideways, twist, radial, across);
            var arm = Math.Max(bodies[joint.Eye].GyrationMm, bodies[joint.Bar].GyrationMm);
            worst = Math.Max(worst, arm * Math.Max(-free.Outward - lie.Hinge, lie.Hinge - free.Inward));
            if (excess > 0)
            {
                worst = Math.Max(worst, arm * Math.Max(Math.Abs(Back(lie.Sideways, sideways, excess)), Math.Abs(Back(lie.Twist, twist, excess))));
                worst = Math.Max(worst, Math.Max(Back(lie.RadialMm, radial, excess), Math.Abs(Back(lie.AcrossMm, across, excess))));
            }
        }

        for (var i = 0; hasGround && i < poses.Length; i++)
        {
            worst = bodies[i].IsHeld ? worst : Math.Max(worst, -bodies[i].LowestMm(poses[i]));
        }

        return worst;
    }

    /// <summary>Grams times mm times m/s2 are microjoules.</summary>
    private double Energy()
    {
        var sum = 0.0;
        for (var i = 0; i < poses.Length; i++)
        {
            sum += bodies[i].IsHeld ? 0 : bodies[i].Grams * Gravity * Middle(i).Z;
        }

        return sum;
    }

    // Thousands of small turns leave axes a little askew.
    private static Pose Squared(Pose pose)
    {
        var x = pose.AxisX.Normalised();
        var y = (pose.AxisY - x * x.Dot(pose.AxisY)).Normalised();
        return new Pose(x, y, x.Cross(y), pose.Origin);
    }
}
