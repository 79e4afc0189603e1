using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Bench;

/// <summary>A four-claw link for a 4 mm stone: claws, rails, seat, eye, bar, window and fillets, as a yardstick for meshing.</summary>
/// <remarks>Sizes in mm. Assumed: they look like such a link and are no advice for making one.</remarks>
internal static class FourClawLink
{
    private const double StoneRadius = 2.0, HalfGirdle = 0.06, FilletWidth = 0.15;

    public static Solid Build()
    {
        var parts = new List<Solid>();
        double lean = Math.Tan(5 * Math.PI / 180), girdle = StoneRadius + 0.10;
        for (var claw = 0; claw < 4; claw++)
        {
            var angle = Math.PI / 4 + claw * Math.PI / 2;
            double foot = girdle - 2.4 * lean, tip = girdle + 0.75 * lean, c = Math.Cos(angle), s = Math.Sin(angle);
            parts.Add(Shape.TaperedCapsule(new Vec3(foot * c, foot * s, -2.4), 0.45, new Vec3(tip * c, tip * s, 0.75), 0.40));
        }

        parts.Add(Shape.Torus(1.95, 0.35).Moved(0, 0, -1.2));
        parts.Add(Shape.Ring(1.55, 2.25, 0.60, 0.10).Moved(0, 0, -2.4));
        var upright = Pose.Turn(Vec3.UnitX, Math.PI / 2);
        parts.Add(Shape.TorusArc(0.6, 0.25, Math.PI / 2).Moved(upright).Moved(2.15, 0, -1.9));
        parts.Add(Shape.Rod(new Vec3(-2.35, -1, -2.4), new Vec3(-2.35, 1, -2.4), 0.3, 0.05));
        var metal = Solid.Union(Blend.Fillet(FilletWidth / Math.Sqrt(2)), [.. parts]);
        return metal.Minus(Stone(), Shape.Box(0.8, 2, 0.3).Moved(0, 2, -2.4));
    }

    /// <summary>The stone turned about its axis, standing for its facets.</summary>
    private static Solid Stone()
    {
        // Source of the angles: crown 34.5 and pavilion 40.75 degrees, usual for a round brilliant (common practice).
        double crown = 34.5 * Math.PI / 180, pavilion = 40.75 * Math.PI / 180;
        double top = HalfGirdle + StoneRadius * 0.43 * Math.Tan(crown), table = StoneRadius * 0.57;
        var culet = -HalfGirdle - StoneRadius * Math.Tan(pavilion);
        return Shape.Revolved([(0, culet), (StoneRadius, -HalfGirdle), (StoneRadius, HalfGirdle), (table, top), (-table, top), (-StoneRadius, HalfGirdle), (-StoneRadius, -HalfGirdle)]);
    }
}
