using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

/// <summary>One solid of every kind that the room can build, so that each law is held by all of them.</summary>
internal static class NamedSolids
{
    private static readonly (double X, double Y)[] Notched = [(-1, -1), (1.2, -0.8), (1, 0.9), (0.1, 0.2), (-0.9, 1)];

    /// <summary>Name and solid; all fit in a box of 3 mm half edge but the half-space and the complements.</summary>
    public static IReadOnlyDictionary<string, Solid> All { get; } = new Dictionary<string, Solid>(StringComparer.Ordinal)
    {
        ["ball"] = Shape.Ball(1.3),
        ["half-space"] = Shape.HalfSpace(new Vec3(0.1, 0.2, 0.3), new Vec3(1, 2, -2)),
        ["capsule"] = Shape.Capsule(new Vec3(-1, 0.5, -1), new Vec3(1.2, -0.3, 0.8), 0.4),
        ["tapered capsule"] = Shape.TaperedCapsule(new Vec3(-1, 0.2, -1), 0.7, new Vec3(0.9, 0.4, 1), 0.25),
        ["torus"] = Shape.Torus(1.5, 0.4),
        ["short torus arc"] = Shape.TorusArc(1.5, 0.4, 0.8),
        ["long torus arc"] = Shape.TorusArc(1.5, 0.3, 2.6),
        ["half torus arc"] = Shape.TorusArc(1.5, 0.3, Math.PI / 2),
        ["box"] = Shape.Box(2, 1.5, 1),
        ["rounded box"] = Shape.Box(2, 1.5, 1, 0.3),
        ["box between"] = Shape.BoxBetween(new Vec3(-1, 0, 0.5), new Vec3(1, 1.5, 2), 0.1),
        ["cylinder"] = Shape.Cylinder(0.9, 1.6),
        ["rounded cylinder"] = Shape.Cylinder(0.9, 1.6, 0.2),
        ["rod"] = Shape.Rod(new Vec3(-1, 1, 0), new Vec3(1, -0.5, 0.7), 0.5, 0.1),
        ["rod downwards"] = Shape.Rod(new Vec3(0.2, 0.1, 1), new Vec3(0.2, 0.1, -1), 0.5),
        ["frustum"] = Shape.Cone(1.2, 0.5, 1.5),
        ["cone"] = Shape.Cone(1.2, 0, 1.5),
        ["cone on its tip"] = Shape.Cone(0, 1.2, 1.5),
        ["ring"] = Shape.Ring(0.8, 1.5, 0.9),
        ["rounded ring"] = Shape.Ring(0.8, 1.5, 0.9, 0.2),
        ["plate"] = Shape.Plate(2.4, 1.6, 0.7, 0.5, 0.15),
        ["extruded polygon"] = Shape.Extruded(Notched, 1.2),
        ["extruded rounded polygon"] = Shape.Extruded(Notched, 1.2, 0.2, 0.1),
        ["revolved polygon"] = Shape.Revolved([(0.5, -1), (1.4, -0.6), (1.1, 0.2), (1.5, 0.9), (0.6, 0.8)], 0.1),
        ["facets"] = Octahedron(1.1),
        ["facets grown"] = Octahedron(0.9).Grown(0.2),
        ["union"] = Solid.Union(Shape.Ball(1), Shape.Box(0.8, 0.8, 3), Shape.Cylinder(0.3, 4).Moved(Pose.Turn(Vec3.UnitX, 1.2))),
        ["filleted union"] = Solid.Union(Blend.Fillet(0.2), Shape.Ball(1), Shape.Box(0.8, 0.8, 3), Shape.Torus(1.6, 0.3)),
        ["chamfered union"] = Solid.Union(Blend.Chamfer(0.3), Shape.Cylinder(1.2, 0.8), Shape.Cylinder(0.5, 3)),
        ["intersection"] = Solid.Common(Shape.Ball(1.2), Shape.Box(1.8, 1.8, 1.8), Shape.HalfSpace(new Vec3(0.3, 0, 0), new Vec3(1, 1, 0))),
        ["filleted intersection"] = Solid.Common(Blend.Fillet(0.15), Shape.Ball(1.2), Shape.Box(1.8, 1.8, 1.8)),
        ["chamfered intersection"] = Solid.Common(Blend.Chamfer(0.2), Shape.Cylinder(1, 1.5), Shape.HalfSpace(new Vec3(0, 0, 0.4), new Vec3(0, 1, 2))),
        ["difference"] = Shape.Box(2, 2, 1).Minus(Shape.Cylinder(0.5, 3), Shape.Ball(0.6).Moved(1, 1, 0.5)),
        ["filleted difference"] = Shape.Box(2, 2, 1).Minus(Blend.Fillet(0.1), Shape.Cylinder(0.5, 3)),
        ["shell"] = Shape.Box(2, 1.5, 1.2, 0.2).Shell(0.25),
        ["grown union"] = Solid.Union(Blend.Fillet(0.2), Shape.Ball(0.8), Shape.Box(0.6, 0.6, 2.6)).Grown(0.2),
        ["shrunk box"] = Shape.Box(2, 1.5, 1.8, 0.4).Grown(-0.2),
        ["mirrored"] = Shape.TorusArc(1.2, 0.3, 1.1).Moved(0.5, 0.3, 0.2).Moved(Pose.Mirror(new Vec3(1, 0.3, 0.2))),
        ["turned"] = Shape.Plate(2.4, 1.2, 0.7, 0.3).Moved(Pose.TurnAbout(new Vec3(0.1, 0.2, 0.3), new Vec3(1, 2, 3), 0.9)),
        ["turned filleted difference"] = Shape.Box(2, 2, 1).Minus(Blend.Fillet(0.1), Shape.Ball(0.8)).Moved(Pose.Turn(new Vec3(3, 1, 2), 2.2)),
        ["complement"] = Shape.Torus(1.4, 0.4).Complement(),
        ["complement of a grown union"] = Solid.Union(Blend.Chamfer(0.2), Shape.Ball(1), Shape.Box(3, 0.7, 0.7)).Grown(0.1).Complement(),
        ["complement of facets"] = Octahedron(1.2).Complement(),
    };

    /// <summary>The names alone, for theories.</summary>
    public static TheoryData<string> Names => [.. All.Keys];

    private static Solid Octahedron(double offset)
    {
        var planes = new List<(Vec3 Normal, double Offset)>();
        for (var k = 0; k < 8; k++)
        {
            planes.Add((new Vec3((k & 1) - 0.5, (k >> 1 & 1) - 0.5, (k >> 2 & 1) - 0.5).Normalised(), offset));
        }

        var reach = offset * Math.Sqrt(3);
        return Shape.Faceted([.. planes], Bounds.Around(reach, reach, reach));
    }
}
