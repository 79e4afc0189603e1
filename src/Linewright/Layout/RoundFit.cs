using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>How a closed line lies on a round wrist: what the wrist feels and how far the hinges turn.</summary>
/// <param name="RadiusMm">Of the round wrist that the links' skin sides touch at their middles.</param>
/// <param name="HingeHeightMm">Hinge axes over the skin.</param>
/// <param name="HingeAngle">Turn between two neighbouring links, radians.</param>
/// <param name="ClaspHingeAngle">Turn between the clasp and the link beside it, radians.</param>
/// <remarks>
/// Calculated: a link of length p seen from the axis at distance R + h covers 2 atan((p / 2) / (R + h)), and all
/// links and the clasp together cover a full turn. The clasp counts as touching at its middle, as a link does.
/// A chain whose hinge axes all lie on one circle (see <see cref="WristFit"/>) comes out larger by a hair:
/// 0.005 mm in radius for a clasp of 6.8 mm on 26 mm, 0.04 mm for one of 11.3 mm.
/// A radius below zero means a line too short for its own height.
/// </remarks>
public sealed record RoundFit(double RadiusMm, double HingeHeightMm, double HingeAngle, double ClaspHingeAngle)
{
    // Newton gains digits so fast that a line that still moves after so many steps never will settle.
    private const int MostSteps = 60;

    /// <summary>Inside circumference: what the wrist feels.</summary>
    public double InsideCircumferenceMm => 2 * Math.PI * RadiusMm;

    /// <summary>Turn between two neighbouring links, degrees.</summary>
    public double HingeAngleDeg => double.RadiansToDegrees(HingeAngle);

    /// <summary>Turn between the clasp and the link beside it, degrees.</summary>
    public double ClaspHingeAngleDeg => double.RadiansToDegrees(ClaspHingeAngle);

    /// <summary>Closes the line around a round wrist.</summary>
    /// <param name="count">Links, at least 2.</param>
    /// <param name="pitch">Link length, mm.</param>
    /// <param name="clasp">Clasp length, mm.</param>
    /// <param name="hingeHeight">Hinge axes over the skin, mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is no number or not above 0, or there are too few links.</exception>
    public static RoundFit Solve(int count, double pitch, double clasp, double hingeHeight)
    {
        _ = new HingeChain(count, pitch, clasp, hingeHeight).Checked();

        // In u = 1 / (R + h) the covered angle rises and bends down: Newton from below never oversteps.
        // atan x is below x, so the smooth circle of the same length gives a start below the root.
        var u = 2 * Math.PI / (count * pitch + clasp);
        for (var step = 0; step < MostSteps; step++)
        {
            double p = pitch / 2 * u, c = clasp / 2 * u;
            var missing = 2 * Math.PI - 2 * count * Math.Atan(p) - 2 * Math.Atan(c);
            var rate = count * pitch / (1 + p * p) + clasp / (1 + c * c);
            var next = u + missing / rate;
            if (!(Math.Abs(next - u) > 1e-15 * u))
            {
                break;
            }

            u = next;
        }

        double link = Math.Atan(pitch / 2 * u), end = Math.Atan(clasp / 2 * u);
        return new RoundFit(1 / u - hingeHeight, hingeHeight, 2 * link, link + end);
    }

    /// <summary>The clasp that closes a line of given links on a round wrist exactly.</summary>
    /// <param name="count">Links.</param>
    /// <param name="pitch">Link length, mm.</param>
    /// <param name="axisRadius">Wrist radius plus hinge height, mm, above 0.</param>
    /// <returns>Length in mm; not above 0 where the links alone go round, infinite where they leave half the ring or more.</returns>
    public static double ClaspFor(int count, double pitch, double axisRadius)
    {
        var left = Math.PI - count * Math.Atan(pitch / (2 * Guard.Positive(axisRadius)));
        return left >= Math.PI / 2 ? double.PositiveInfinity
            : left <= -Math.PI / 2 ? double.NegativeInfinity
            : 2 * axisRadius * Math.Tan(left);
    }

    /// <summary>The pitch at which a number of links and a clasp close on a round wrist exactly, mm.</summary>
    /// <returns>Length in mm; infinite where so few links cannot close.</returns>
    public static double PitchFor(int count, double clasp, double axisRadius)
    {
        var each = (Math.PI - Math.Atan(clasp / (2 * Guard.Positive(axisRadius)))) / count;
        return each >= Math.PI / 2 ? double.PositiveInfinity : 2 * axisRadius * Math.Tan(each);
    }
}
