using BenchmarkDotNet.Attributes;
using Linewright.Layout;
using Linewright.Solids.Polyhedra;
using Linewright.Solids.Space;
using Linewright.Stones;

namespace Linewright.Bench;

/// <summary>What the layout asks most often: a whole plan, and how near two neighbouring stones come.</summary>
[MemoryDiagnoser]
public class PlanBenchmarks
{
    // A rope of a metre and a half: over 900 links.
    private static readonly LineTask Rope = new(
        1.2, 1500, GapPreferredMm: 0.3, GapMinMm: 0.2, GapMaxMm: 0.4, ClaspMinMm: 10, ClaspIdealMm: 11.5, ClaspMaxMm: 14,
        HingeHeightMm: 2, PlayMm: 0.05, StoneCt: 0.24);

    private const int Poses = 2000;

    private readonly ConvexPolyhedron stone = RoundBrilliant.Cut(4, BrilliantProportions.Modern).Stone!.Body;

    /// <summary>A plan of so many links. Goal 1 ms.</summary>
    [Benchmark]
    public LinePlan PlanRope() => LinePlanner.Plan(Rope);

    /// <summary>Two stones of 4 mm, one turned about their hinge by 17 degrees either way; time is of one pair. Goal 20 microseconds.</summary>
    [Benchmark(OperationsPerInvoke = Poses)]
    public double NeighbouringStones()
    {
        double least = double.MaxValue;
        for (var i = 0; i < Poses; i++)
        {
            var bent = Pose.TurnAbout(new Vec3(2.25, 0, -0.77), Vec3.UnitY, i * 0.6 / Poses - 0.3);
            least = Math.Min(least, ConvexDistance.Between(stone, Pose.Identity, stone, Pose.Move(4.5, 0, 0).Then(bent)).Distance);
        }

        return least;
    }
}
