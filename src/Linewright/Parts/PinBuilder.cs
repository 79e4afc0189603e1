using Linewright.Solids.Shapes;

namespace Linewright.Parts;

/// <summary>Builds the drawn wire of a pinned joint, along y about its own axis.</summary>
internal static class PinBuilder
{
    // The ends are riveted or laser-tacked flush; a hair of length each side feeds the head. Common practice: 0.15 to 0.2.
    private const double HeadMm = 0.15;

    /// <summary>The pin as cut to length.</summary>
    public static Solid Build(HingeForm hinge)
        => HingeEnds.AlongY(Shape.Cylinder(hinge.BarMm / 2, 2 * hinge.CheekOuterMm + 2 * HeadMm, 0.05));
}
