using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>How far a part can turn until it comes within a clearance of another, and what meets first.</summary>
/// <remarks>
/// Source: conservative advancement, Mirtich (1996), Impulse-based dynamic simulation of rigid body systems. A probe
/// at distance r from the axis moves at most r times the angle, so an angle of (gap - clearance) / r is free of
/// contact; the smallest such angle over all probes is the next step. Nothing that lasts for a twentieth of a degree
/// is stepped over. The angle of contact is then refined to a hundredth of a degree on exact pairs of surface points.
/// A bearing that touches from the start is a contact at 0: pose the pair with the play shared out evenly.
/// </remarks>
public static class FirstContact
{
    /// <summary>To how much the angle of contact is halved down.</summary>
    private const double Settled = 0.01 * Math.PI / 180;

    // Between probes a surface may stand out and touch a little earlier than any probe: look back by a tenth of a degree
    // first, then three times as far each time.
    private const double FirstBack = 0.1 * Math.PI / 180;

    // After so many pairs each of which was met earlier by another, all are looked at, halving three degrees.
    private const int MostFollowed = 4;
    private const double LookBack = 3 * Math.PI / 180;

    /// <summary>Turns the second side about an axis, from its pose towards a limit.</summary>
    /// <param name="sideA">Bodies at rest.</param>
    /// <param name="poseA">Their pose in the outer frame.</param>
    /// <param name="sideB">Bodies that turn.</param>
    /// <param name="poseB">Their pose at angle 0.</param>
    /// <param name="axisPoint">A point of the axis in the outer frame, mm.</param>
    /// <param name="axis">Direction of the axis; right-handed.</param>
    /// <param name="limit">Where to stop, radians; negative turns the other way.</param>
    /// <param name="clearance">The gap that counts as contact, mm, 0 or more.</param>
    public static FirstContactResult Turning(
        ReadOnlySpan<Body> sideA, Pose poseA, ReadOnlySpan<Body> sideB, Pose poseB,
        Vec3 axisPoint, Vec3 axis, double limit, double clearance = 0)
    {
        var unit = axis.Normalised();
        var sweep = new Sweep(
            sideA, poseA, sideB, angle => poseB.Then(Pose.TurnAbout(axisPoint, axis, angle)), FromAxis(poseA), FromAxis(poseB), clearance);
        return Run(sweep, limit);

        Func<Vec3, double> FromAxis(Pose pose) => p => unit.Cross(pose.Point(p) - axisPoint).Length;
    }

    /// <summary>Moves the second side along any family of poses of one parameter, from 0 towards a limit.</summary>
    /// <param name="sideA">Bodies at rest.</param>
    /// <param name="poseA">Their pose in the outer frame.</param>
    /// <param name="sideB">Bodies that move.</param>
    /// <param name="poseB">Their pose at a parameter.</param>
    /// <param name="limit">Where to stop; negative goes the other way. In radians for turns: the smallest step is 0.05 degrees.</param>
    /// <param name="reach">How far any point of the moving side moves at most for a unit of the parameter, mm: for a turn the largest distance from the axis.</param>
    /// <param name="clearance">The gap that counts as contact, mm, 0 or more.</param>
    public static FirstContactResult Angle(
        ReadOnlySpan<Body> sideA, Pose poseA, ReadOnlySpan<Body> sideB, Func<double, Pose> poseB,
        double limit, double reach, double clearance = 0)
    {
        ArgumentNullException.ThrowIfNull(poseB);
        Guard.Positive(reach);
        return Run(new Sweep(sideA, poseA, sideB, poseB, _ => reach, _ => reach, clearance), limit);
    }

    private static FirstContactResult Run(Sweep sweep, double limit)
    {
        Guard.Finite(limit);
        var way = Math.Sign(limit);
        var length = Math.Abs(limit);

        // A short way may be due to a distance understated at an edge: the exact pair decides.
        while (sweep.NextMeeting(length, way) is { } at)
        {
            if (sweep.Touches(at * way, out var pair))
            {
                return Refine(sweep, at, way, pair);
            }
        }

        return sweep.Touches(length * way, out var last)
            ? Refine(sweep, length, way, last)
            : new FirstContactResult(false, limit, sweep.Nearest(sweep.LeastAt * way), sweep.LeastAt * way);
    }

    private static FirstContactResult Refine(Sweep sweep, double at, int way, FeltPair pair)
    {
        for (var followed = 0; followed < MostFollowed; followed++)
        {
            var (met, there) = Follow(sweep, at, way, pair);
            var before = Math.Max(0, met - Settled);
            if (met == 0 || !sweep.Touches(before * way, out var other))
            {
                return new FirstContactResult(true, met * way, there, met * way);
            }

            (at, pair) = (before, other);
        }

        return Halve(sweep, at, way, pair.Result);
    }

    /// <summary>Follows one pair back from where it is in contact to where it meets.</summary>
    private static (double At, ClearanceResult Pair) Follow(Sweep sweep, double at, int way, FeltPair pair)
    {
        double high = at, low = at, back = FirstBack;
        ClearanceResult highPair = pair.Result, lowPair;
        while (true)
        {
            low = Math.Max(0, low - back);
            lowPair = sweep.Follow(pair, low * way);
            if (!sweep.IsContact(lowPair))
            {
                break;
            }

            (high, highPair, back) = (low, lowPair, 3 * back);
            if (low == 0)
            {
                return (0, lowPair);
            }
        }

        // The gap falls nearly evenly: aim a little to the far side of where the chord meets zero.
        var isHighLast = false;
        while (high - low > Settled)
        {
            double above = sweep.Excess(lowPair), below = sweep.Excess(highPair);
            var aim = low + (high - low) * above / (above - below) + (isHighLast ? -Settled : Settled) / 3;
            aim = Math.Clamp(aim, low + 0.1 * (high - low), high - 0.1 * (high - low));
            var there = sweep.Follow(pair, aim * way);
            isHighLast = sweep.IsContact(there);
            (low, lowPair, high, highPair) = isHighLast ? (low, lowPair, aim, there) : (aim, there, high, highPair);
        }

        return (high, highPair);
    }

    private static FirstContactResult Halve(Sweep sweep, double at, int way, ClearanceResult pair)
    {
        var low = Math.Max(0, at - LookBack);
        if (low > 0 && sweep.Touches(low * way, out var earlier))
        {
            (at, pair, low) = (low, earlier.Result, 0);
        }

        while (at - low > Settled)
        {
            var middle = (low + at) / 2;
            if (sweep.Touches(middle * way, out var there))
            {
                (at, pair) = (middle, there.Result);
            }
            else
            {
                low = middle;
            }
        }

        return new FirstContactResult(true, at * way, pair, at * way);
    }
}
