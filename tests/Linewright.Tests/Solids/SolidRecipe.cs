using CsCheck;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Solids;

/// <summary>A random solid as plain data, so that a failing one can be printed, shrunk and kept as a case.</summary>
/// <param name="Parts">What is joined and what is cut away.</param>
/// <param name="Fillet">Radius at the inside edges of the union, mm; 0 is sharp.</param>
/// <param name="CutFillet">Radius at the edges of the cuts, mm; 0 is sharp.</param>
internal sealed record SolidRecipe(IReadOnlyList<SolidRecipe.Part> Parts, double Fillet, double CutFillet)
{
    private static readonly Gen<Vec3> Places = Gen.Select(Gen.Double[-0.7, 0.7], Gen.Double[-0.7, 0.7], Gen.Double[-0.7, 0.7], (x, y, z) => new Vec3(x, y, z));

    private static readonly Gen<Part> OnePart = Gen.Select(Gen.Int[0, 7], Places, Places, Gen.Double[-3, 3], Gen.Double[0.15, 0.8], Gen.Double[0.1, 0.9])
        .SelectMany(p => Gen.Bool.Select(cut => new Part(p.Item1, p.Item2, p.Item3, p.Item4, p.Item5, p.Item6, cut)));

    private static readonly Gen<double> Radius = Gen.OneOf(Gen.Const(0.0), Gen.Double[0.02, 0.2]);

    /// <summary>Recipes of up to six parts; the first one is never cut away.</summary>
    public static Gen<SolidRecipe> Any { get; } = Gen.Select(OnePart.List[1, 6], Radius, Radius, (parts, fillet, cut) => new SolidRecipe(parts, fillet, cut));

    /// <summary>The solid; fits in a box of 4 mm half edge.</summary>
    public Solid Build()
    {
        var joined = new List<Solid>();
        var cuts = new List<Solid>();
        foreach (var part in Parts)
        {
            (part.IsCut && joined.Count > 0 ? cuts : joined).Add(part.Build());
        }

        var union = Solid.Union(Blend.Fillet(Fillet), [.. joined]);
        return cuts.Count == 0 ? union : union.Minus(Blend.Fillet(CutFillet), [.. cuts]);
    }

    public override string ToString()
        => FormattableString.Invariant($"new SolidRecipe([{string.Join(", ", Parts)}], {Fillet:R}, {CutFillet:R})");

    /// <summary>One primitive: its kind, where, turned about which axis by how much, two sizes in mm, joined or cut away.</summary>
    internal sealed record Part(int Kind, Vec3 At, Vec3 Axis, double Angle, double Size, double Ratio, bool IsCut)
    {
        public Solid Build()
        {
            double small = Size * Ratio;
            var shape = Kind switch
            {
                0 => Shape.Ball(Size),
                1 => Shape.Box(2 * Size, 2 * small, Size + small),
                2 => Shape.Box(2 * Size, 2 * small, Size + small, small * 0.4),
                3 => Shape.Capsule(new Vec3(-Size, 0, 0), new Vec3(Size, 0, small), 0.3 * small + 0.05),
                4 => Shape.TaperedCapsule(new Vec3(0, 0, -Size), 0.4 * small + 0.05, new Vec3(0, 0, Size), 0.1 * small + 0.05),
                5 => Shape.Torus(Size, 0.4 * small + 0.04),
                6 => Shape.Cylinder(small, 2 * Size),
                _ => Shape.Ring(small, Size + 0.1, Size, 0.02),
            };
            return shape.Moved(Pose.Turn(Axis.Length > 0.05 ? Axis : Vec3.UnitX, Angle)).Moved(Pose.Move(At));
        }

        public override string ToString() => FormattableString.Invariant(
            $"new({Kind}, new({At.X:R}, {At.Y:R}, {At.Z:R}), new({Axis.X:R}, {Axis.Y:R}, {Axis.Z:R}), {Angle:R}, {Size:R}, {Ratio:R}, {(IsCut ? "true" : "false")})");
    }
}
