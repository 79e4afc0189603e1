using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>The closed line around a wrist: rigid links, the clasp in the middle of the flat under side.</summary>
/// <param name="Form">The wrist that the closed line just goes round.</param>
/// <param name="Placements">Links in order, then the clasp. Wrist axis along y through the origin, depth along z, the clasp at the bottom.</param>
/// <param name="HingeAngles">Turn at each hinge, radians: the first between clasp and link 0, the last between the last link and the clasp.</param>
/// <param name="ClaspSagittaMm">How far a clasp with a straight underside would press into the form; its underside must be hollowed by as much.</param>
/// <param name="HingeOffsetMm">Distance between the form and the curve on which the hinge axes lie: hinge height and the links' largest sagitta.</param>
/// <remarks>
/// Model: all hinge axes lie on one curve, everywhere equally far outside a superellipse. That distance is the
/// smallest at which every link's straight skin side stays outside the form or touches it; the form's size is the
/// one at which the taut chain closes exactly. The clasp is left out of the touching: it is bridged or hollowed.
/// Even turns follow, as a worn line has them; a chain pulled tight over a hard form would alternate.
/// On a circle (ratio 1, exponent 2) with a clasp as long as a link this is <see cref="RoundFit"/> exactly.
/// </remarks>
public sealed record WristFit(
    WristForm Form,
    ImmutableArray<LinkPlacement> Placements,
    ImmutableArray<double> HingeAngles,
    double ClaspSagittaMm,
    double HingeOffsetMm)
{
    // The offset settles by a factor of some hundred a round; 1e-11 mm is past any use.
    private const int MostRounds = 30;
    private const double TouchTolerance = 1e-11;

    /// <summary>The turn that articulation must allow, radians.</summary>
    public double LargestHingeAngle => HingeAngles.Max();

    /// <summary>The turn that articulation must allow, degrees.</summary>
    public double LargestHingeAngleDeg => double.RadiansToDegrees(LargestHingeAngle);

    /// <summary>What the wrist feels, mm.</summary>
    public double InsideCircumferenceMm => Form.PerimeterMm;

    /// <summary>Closes a line around a wrist of a given shape; the size follows.</summary>
    /// <param name="chain">The line.</param>
    /// <param name="depthRatio">Depth over breadth, 0.3 to 1.</param>
    /// <param name="exponent">Of the superellipse, 2 to 5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static WristFitResult Solve(
        HingeChain chain, double depthRatio = WristForm.UsualDepthRatio, double exponent = WristForm.UsualExponent)
    {
        ArgumentNullException.ThrowIfNull(chain);
        _ = chain.Checked();
        var shape = new WristForm(1, depthRatio, exponent).Checked();
        if (chain.ClaspMm >= chain.LaidFlatMm / 2 || chain.PitchMm >= chain.LaidFlatMm / 2)
        {
            return TooShort($"one piece is as long as all others together ({chain.LaidFlatMm:F1} mm laid flat)");
        }

        // Start with hinges a hinge height away; push out by what the links press in until they just touch.
        var offset = chain.HingeHeightMm;
        var unitPerimeter = shape.PerimeterMm;
        for (var round = 0; ; round++)
        {
            var smallest = (chain.LaidFlatMm - 2 * Math.PI * offset) / unitPerimeter;
            if (!(smallest > 0))
            {
                return TooShort($"{chain.LaidFlatMm:F1} mm laid flat do not go round once with hinges {chain.HingeHeightMm:F2} mm over the skin");
            }

            var ring = WristRing.Close(chain, shape, offset, smallest);
            var placements = Placing.AroundY(ring.Hinges, chain.HingeHeightMm);
            var clearance = placements.Where(p => !p.IsClasp).Min(p => Clearance(p, ring.Form));
            if (Math.Abs(clearance) > TouchTolerance && round < MostRounds)
            {
                offset -= clearance;
                continue;
            }

            var sagitta = Math.Max(0, -Clearance(placements[^1], ring.Form));
            return new WristFitResult(FitStatus.Fits, new WristFit(ring.Form, placements, Turns(placements), sagitta, offset), string.Empty);
        }
    }

    /// <summary>Room between a piece's skin plane and the form, mm; below 0 where it presses in.</summary>
    private static double Clearance(LinkPlacement placement, WristForm form)
        => placement.Pose.Origin.Dot(placement.Pose.AxisZ) - form.Support(placement.Pose.AxisZ);

    private static ImmutableArray<double> Turns(ImmutableArray<LinkPlacement> placements)
    {
        var turns = ImmutableArray.CreateBuilder<double>(placements.Length);
        for (var i = 0; i < placements.Length; i++)
        {
            Vec3 before = placements[(i + placements.Length - 1) % placements.Length].Pose.AxisX, after = placements[i].Pose.AxisX;
            turns.Add(Math.Atan2(before.Cross(after).Dot(Vec3.UnitY), before.Dot(after)));
        }

        return turns.MoveToImmutable();
    }

    private static WristFitResult TooShort(FormattableString reason)
        => new(FitStatus.LineTooShort, null, FormattableString.Invariant(reason));
}
