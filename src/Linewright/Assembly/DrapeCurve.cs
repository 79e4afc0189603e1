using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>A curve on the ground whose bends swell and fade, never tighter than asked: first to the left, then to the right.</summary>
/// <remarks>
/// The bend follows a sine, cut off at the tightest: most of each bend is a plain arc, and it runs straight into the
/// clasp at both ends and from one bend into the other. Heading 0 in its middle third, so that an S lies along x.
/// </remarks>
internal static class DrapeCurve
{
    private const double StepMm = 0.05;

    // Higher, and the bends begin as abruptly as arcs of a circle. Chosen by eye.
    private const double Fullness = 1.7;

    /// <summary>Points along the curve.</summary>
    /// <param name="lengthMm">Of the bent part.</param>
    /// <param name="radiusMm">The tightest bend.</param>
    /// <param name="bends">1 for an open loop, 2 for an S.</param>
    /// <param name="mostTurn">No bend turns further than this in all, radians; the radius grows where it would.</param>
    /// <param name="tailMm">Straight run after it.</param>
    public static ImmutableArray<Vec3> Points(double lengthMm, double radiusMm, int bends, double mostTurn, double tailMm)
    {
        var count = (int)Math.Ceiling(lengthMm / StepMm);
        double Swell(double share) => Math.Clamp(Fullness * Math.Sin(bends * Math.PI * share), -1, 1);
        var turn = Enumerable.Range(0, count / bends).Sum(i => Swell((i + 0.5) / count)) * StepMm / radiusMm;
        var bend = Math.Min(1, mostTurn / turn) / radiusMm;
        var points = ImmutableArray.CreateBuilder<Vec3>();
        var (at, heading) = (Vec3.Zero, 0.0);
        points.Add(at);
        for (var i = 0; i < count + (int)(tailMm / StepMm); i++)
        {
            heading += i < count ? Swell((i + 0.5) / count) * StepMm * bend : 0;
            at += new Vec3(Math.Cos(heading), Math.Sin(heading), 0) * StepMm;
            points.Add(at);
        }

        return points.ToImmutable();
    }
}
