using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Cases;

/// <summary>Small solids that once came out wrong, with what went wrong.</summary>
internal static class OnceFailed
{
    private static readonly Pose Awry = Pose.TurnAbout(new Vec3(1, 0, 2), new Vec3(1, 2, 3), 0.7);

    public static IReadOnlyDictionary<string, Solid> Solids { get; } = new Dictionary<string, Solid>(StringComparer.Ordinal)
    {
        // Ambiguous faces along its sharp edges kept the inside apart: grooves of 19 um, and triangles that met once simplified.
        ["turned plate with a hole"] = Shape.Box(4, 3, 1).Minus(Shape.Cylinder(0.8, 3)).Moved(Awry),

        // Simplifying spent the deviation on its corners; later it lost two of them.
        ["clasp box"] = Shape.Box(14, 6, 3),

        // Slivers along its edges, flat in the faces on both sides, joined two faces to one plane.
        ["turned box"] = Shape.Box(3, 2, 1).Moved(Awry),
    };

    public static TheoryData<string> Names => [.. Solids.Keys];
}
