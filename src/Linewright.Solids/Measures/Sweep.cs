using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>Two sides, one of which moves: finds where probes are about to meet, and follows a pair to where it meets.</summary>
/// <remarks>
/// Every cluster of probes goes on by what is free for itself, the one furthest behind first. Clusters that slide along
/// a face with a hair's play take many steps, all others few. Not safe to share between threads.
/// </remarks>
internal sealed class Sweep
{
    /// <summary>Least step; a contact that opens again within less may be missed.</summary>
    public const double LeastStep = 0.05 * Math.PI / 180;

    // A pair this near to the clearance is in contact: single precision knows no better.
    private const double Touch = 2e-6;

    // How far from where a pair was it is looked for again, in covers of the probes.
    private const double FollowInCovers = 4;

    private readonly Body[] sideA, sideB;
    private readonly Pose poseA;
    private readonly Func<double, Pose> poseB;
    private readonly double clearance;
    private readonly List<Front> fronts = [];
    private readonly PriorityQueue<(int Front, int Cluster), double> queue = new();
    private double asked = double.NegativeInfinity, leastGap = double.PositiveInfinity;

    /// <param name="sideA">Bodies at rest.</param>
    /// <param name="poseA">Their pose.</param>
    /// <param name="sideB">Bodies that move.</param>
    /// <param name="poseB">Their pose at a parameter.</param>
    /// <param name="reachOfA">How far a point of the resting side moves against the moving one for a unit of the parameter, mm.</param>
    /// <param name="reachOfB">The same for the moving side.</param>
    /// <param name="clearance">The gap that counts as contact, mm.</param>
    public Sweep(
        ReadOnlySpan<Body> sideA, Pose poseA, ReadOnlySpan<Body> sideB, Func<double, Pose> poseB,
        Func<Vec3, double> reachOfA, Func<Vec3, double> reachOfB, double clearance)
    {
        (this.poseA, this.poseB, this.clearance) = (poseA, poseB, Guard.InRange(clearance, 0, 1e3));
        (this.sideA, this.sideB) = (sideA.ToArray(), sideB.ToArray());
        var reachesB = Array.ConvertAll(this.sideB, b => Front.Reaches(b.Probes, reachOfB));
        foreach (var a in this.sideA)
        {
            var reachesA = Front.Reaches(a.Probes, reachOfA);
            for (var j = 0; j < reachesB.Length; j++)
            {
                var b = this.sideB[j];
                fronts.Add(new Front(a.Probes, reachesA, b, true));
                fronts.Add(new Front(b.Probes, reachesB[j], a, false));
            }
        }

        for (var front = 0; front < fronts.Count; front++)
        {
            for (var cluster = 0; cluster < fronts[front].Reach.Length; cluster++)
            {
                queue.Enqueue((front, cluster), 0);
            }
        }
    }

    /// <summary>How far from 0 the parameter was where a probe came nearest.</summary>
    public double LeastAt { get; private set; }

    /// <summary>The next way from 0 at which a probe may be about to meet the other side; null where all have come to the end.</summary>
    /// <param name="length">The end.</param>
    /// <param name="way">1, or -1 where the parameter falls.</param>
    public double? NextMeeting(double length, int way)
    {
        var (posedAt, toB, toA) = (double.NaN, Pose.Identity, Pose.Identity);
        while (queue.TryDequeue(out var next, out var at))
        {
            if (at != posedAt)
            {
                toB = ToB(at * way);
                (posedAt, toA) = (at, toB.Inverse());
            }

            var front = fronts[next.Front];
            var before = leastGap;
            var free = front.Free(next.Cluster, front.IsOfA ? toB : toA, clearance, ref leastGap);
            LeastAt = leastGap < before ? at : LeastAt;
            if (at < length)
            {
                queue.Enqueue(next, Math.Min(length, at + Math.Max(free, LeastStep)));
            }

            if (free < LeastStep && at >= asked)
            {
                asked = at + LeastStep;
                return at;
            }
        }

        return null;
    }

    /// <summary>True where the exact gap is within the clearance here, with the pair.</summary>
    public bool Touches(double at, out FeltPair pair)
    {
        pair = Clearance.Find(sideA, poseA, sideB, poseB(at), clearance + 2 * Touch);
        return IsContact(pair.Result);
    }

    /// <summary>True where a gap counts as contact.</summary>
    public bool IsContact(ClearanceResult pair) => pair.GapMm <= clearance + Touch;

    /// <summary>How much a gap is over what counts as contact, mm.</summary>
    public double Excess(ClearanceResult pair) => pair.GapMm - clearance - Touch;

    /// <summary>The nearest pair here.</summary>
    public ClearanceResult Nearest(double at) => Clearance.Find(sideA, poseA, sideB, poseB(at), double.PositiveInfinity).Result;

    /// <summary>The same two places of two surfaces at another parameter.</summary>
    public ClearanceResult Follow(FeltPair pair, double at)
    {
        var toB = ToB(at);
        Body a = sideA[pair.A], b = sideB[pair.B];
        var (own, other, toOther, place) = pair.IsOfA ? (a, b, toB, poseA) : (b, a, toB.Inverse(), poseB(at));
        var reach = Math.Abs(pair.Result.GapMm) + FollowInCovers * own.Probes.Cover;
        var found = new NearestPair(own, other, toOther, pair.Start, reach).From(pair.Start);
        var (onOwn, onOther) = (place.Point(found.Own), place.Point(found.Other));
        return pair.Result with { GapMm = found.Gap, AtA = pair.IsOfA ? onOwn : onOther, AtB = pair.IsOfA ? onOther : onOwn };
    }

    private Pose ToB(double at) => poseA.Then(poseB(at).Inverse());
}
