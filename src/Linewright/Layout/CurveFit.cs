using System.Collections.Immutable;
using Linewright.Brief;
using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>The open line laid on a table along a curve: links first, the clasp after the last, stones up.</summary>
/// <param name="Placements">Links in order, then the clasp; skin plane at z = 0.</param>
/// <param name="LargestTurn">The largest sideways turn between neighbours, radians.</param>
/// <remarks>
/// Every hinge point lies on the curve (its height aside), neighbours exactly a piece's length apart. The hinges of
/// a line bend about their bars; sideways they only have what play gives them, hence the limit.
/// </remarks>
public sealed record CurveFit(ImmutableArray<LinkPlacement> Placements, double LargestTurn)
{
    /// <summary>Lays the line along a polyline.</summary>
    /// <param name="chain">The line.</param>
    /// <param name="path">Points of the curve, x and y in mm, z not read; at least two. The finer, the truer: corners count as they are.</param>
    /// <param name="sidewaysLimit">How far neighbours turn sideways, above 0 to pi / 2 radians.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static CurveFitResult Solve(HingeChain chain, IReadOnlyList<Vec3> path, double sidewaysLimit)
    {
        ArgumentNullException.ThrowIfNull(chain);
        ArgumentNullException.ThrowIfNull(path);
        _ = chain.Checked();
        Guard.InRange(sidewaysLimit, double.Epsilon, Math.PI / 2);
        Guard.InRange(path.Count, 2, int.MaxValue, nameof(path));
        var radius = SmallestRadius(chain, sidewaysLimit);

        // Step along: each hinge is where the curve first leaves the circle around the one before.
        var walk = new PathWalk(path);
        var hinges = new List<Vec3> { walk.At };
        for (var i = 0; i <= chain.Count; i++)
        {
            if (!walk.Step(i < chain.Count ? chain.PitchMm : chain.ClaspMm))
            {
                return new CurveFitResult(FitStatus.CurveTooShort, null, radius, FormattableString.Invariant(
                    $"the curve ends after {i} of {chain.Count} links; the line is {chain.LaidFlatMm:F1} mm long"));
            }

            hinges.Add(walk.At);
        }

        var placements = Placing.OnTable([.. hinges.Select(h => h with { Z = chain.HingeHeightMm })], chain.HingeHeightMm);
        var (turn, where) = LargestTurnOf(placements);
        return turn <= sidewaysLimit
            ? new CurveFitResult(FitStatus.Fits, new CurveFit(placements, turn), radius, string.Empty)
            : new CurveFitResult(FitStatus.CurveTooTight, null, radius, FormattableString.Invariant(
                $"the curve turns {double.RadiansToDegrees(turn):F2} degrees after link {where}, the hinges give {double.RadiansToDegrees(sidewaysLimit):F2}; a bend of {LimitText.AtLeast(radius, 1)} mm radius is the tightest that works"));
    }

    /// <summary>The radius of the circle through the hinge axes at which neighbours turn by exactly the limit, mm.</summary>
    /// <param name="chain">The line.</param>
    /// <param name="sidewaysLimit">Above 0 to pi / 2 radians.</param>
    public static double SmallestRadius(HingeChain chain, double sidewaysLimit)
    {
        ArgumentNullException.ThrowIfNull(chain);
        Guard.InRange(sidewaysLimit, double.Epsilon, Math.PI / 2);

        // Chords of a circle: two neighbours turn by the sum of their half angles. The clasp's joint is the sharpest where the clasp is longer than a link.
        double p = chain.PitchMm, longest = Math.Max(p, chain.ClaspMm);
        double Spare(double radius) => sidewaysLimit - Math.Asin(p / (2 * radius)) - Math.Asin(longest / (2 * radius));
        double low = longest / 2, high = (p + longest) / sidewaysLimit + longest;
        return Spare(low) >= 0 ? low : Roots.Between(Spare, low, high, 1e-13 * high);
    }

    private static (double Turn, int After) LargestTurnOf(ImmutableArray<LinkPlacement> placements)
    {
        var largest = (Turn: 0.0, After: 0);
        for (var i = 1; i < placements.Length; i++)
        {
            Vec3 before = placements[i - 1].Pose.AxisX, after = placements[i].Pose.AxisX;
            var turn = Math.Abs(Math.Atan2(before.Cross(after).Z, before.Dot(after)));
            if (turn > largest.Turn)
            {
                largest = (turn, i - 1);
            }
        }

        return largest;
    }
}
