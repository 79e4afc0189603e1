using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>Builds the safety: a figure-of-eight of round wire at the side of the clasp, captive on one post, snapped over the other.</summary>
internal static class SafetyBuilder
{
    // Wire 0.7, loops that pass a 1.2 ball with a snap, length 6 to 9. Common practice.
    internal const double WireMm = 0.7;

    private const double BallMm = 1.24, NeckMm = 0.8, LoopMm = 1.16, SpanMm = 3.6, StandOffMm = 0.12;

    /// <summary>Inside diameter of a loop, smaller than the ball it snaps over.</summary>
    public static double LoopInsideMm => LoopMm;

    /// <summary>Diameter of the ball.</summary>
    public static double BallDiameterMm => BallMm;

    /// <summary>Where the carrier's post stands along the clasp: in the middle of what the next cheeks leave whole.</summary>
    public static double CarrierPostX(ClaspForm form) => form.CarrierMm + form.CarrierWholeMm / 2;

    /// <summary>Where the box's post stands along the clasp.</summary>
    public static double BoxPostX(ClaspForm form) => CarrierPostX(form) - SpanMm;

    /// <summary>The middle of the box's post, about which an open safety swings, in the clasp's frame.</summary>
    public static Vec3 BoxPost(ClaspForm form) => new(BoxPostX(form), form.WidthMm / 2 + StandOffMm + form.SafetyWireMm / 2, form.HeightMm / 2);

    /// <summary>How far the open safety swings down from its closed pose until its free loop lies on the ground under the clasp, radians.</summary>
    public static double FallAngle(ClaspForm form)
        => Math.Asin(Math.Clamp((form.HeightMm / 2 - LoopMm / 2 - form.SafetyWireMm) / SpanMm, 0, 1));

    /// <summary>A post with its ball, on the side at positive y.</summary>
    public static Solid Post(ClaspForm form, double x)
    {
        // As much thicker as the wire, while the loop still turns on it.
        var neck = Math.Min(NeckMm + form.SafetyWireMm - WireMm, LoopMm - 0.1);
        double side = form.WidthMm / 2, ball = side + StandOffMm + form.SafetyWireMm + BallMm / 4, z = form.HeightMm / 2;
        return Solid.Union(
            Blend.Fillet(0.08),
            Shape.Rod(new Vec3(x, side - 0.3, z), new Vec3(x, ball, z), neck / 2),
            Shape.Ball(BallMm / 2).Moved(x, ball + 0.1, z));
    }

    /// <summary>The figure-of-eight, in the clasp's frame, closed over both posts.</summary>
    public static Solid Build(ClaspForm form)
    {
        double ring = (LoopMm + form.SafetyWireMm) / 2, y = form.WidthMm / 2 + StandOffMm + form.SafetyWireMm / 2, z = form.HeightMm / 2;
        double a = BoxPostX(form), b = CarrierPostX(form);
        Solid Loop(double x) => HingeEnds.AlongY(Shape.Torus(ring, form.SafetyWireMm / 2)).Moved(x, y, z);

        // The wires cross in the middle: each leaves the top of one loop and runs into the bottom of the other as a tangent.
        // No fillets: where a wire leaves its loop they would fill the hole that must pass the ball.
        double sin = 2 * ring / (b - a), cos = Math.Sqrt(1 - sin * sin);
        Solid Cross(double sign) => Shape.Capsule(
            new Vec3(a + sin * ring, y, z + sign * cos * ring), new Vec3(b - sin * ring, y, z - sign * cos * ring), form.SafetyWireMm / 2);
        return Solid.Union(Loop(a), Loop(b), Cross(1), Cross(-1));
    }
}
