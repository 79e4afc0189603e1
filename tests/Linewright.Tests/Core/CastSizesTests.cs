using Linewright.Parts;
using Linewright.Solids.Meshing;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Tests.Core;

/// <summary>Faces that run on each other keep their size as cast; polished ones have their allowance.</summary>
public sealed class CastSizesTests
{
    private const double Hair = 0.005, Allowance = 0.10;

    public static TheoryData<double, string> Joints => new()
    {
        { 1.5, "eye-over-bar" }, { 1.5, "pinned-knuckles" }, { 2.5, "eye-over-bar" }, { 2.5, "pinned-knuckles" },
        { 4.0, "eye-over-bar" }, { 4.0, "pinned-knuckles" }, { 6.5, "eye-over-bar" }, { 6.5, "pinned-knuckles" },
    };

    [Theory]
    [MemberData(nameof(Joints))]
    public void The_eye_is_as_wide_as_cast_as_it_is_as_set(double diameter, string kind)
    {
        var piece = Line(diameter, kind);
        foreach (var (name, centre) in Eyes(piece))
        {
            var part = piece.Parts.Single(p => p.Name == name);
            foreach (var angle in new[] { 0.0, 0.25, 0.5 })
            {
                var ring = centre + Middle(piece.Hinge) * new Vec3(Math.Cos(angle), 0, Math.Sin(angle));
                double set = Across(part.AsSet, ring, piece.Hinge.EyeWidthMm), cast = Across(part.AsCast, ring, piece.Hinge.EyeWidthMm);
                Assert.InRange(cast, set - Hair, set + Hair);
                Assert.InRange(cast, piece.Hinge.EyeWidthMm - 0.06, piece.Hinge.EyeWidthMm + 0.001);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Joints))]
    public void The_eye_is_thicker_round_its_hole_as_cast(double diameter, string kind)
    {
        var piece = Line(diameter, kind);
        var link = piece.Parts[0];
        var outermost = piece.Link.EyeCentre + new Vec3(piece.Hinge.EyeRadiusMm, 0, 0);
        Assert.InRange(link.AsSet.Distance(outermost), -0.001, 0.001);
        Assert.InRange(link.AsCast.Distance(outermost), -Allowance - 0.001, -Allowance + 0.001);
    }

    [Theory]
    [MemberData(nameof(Joints))]
    public void The_tail_of_an_open_eye_keeps_its_width(double diameter, string kind)
    {
        var piece = Line(diameter, kind);
        var isOpen = piece.Hinge.Kind == Linewright.Brief.HingeKind.EyeOverBar;
        foreach (var (name, centre) in Eyes(piece))
        {
            var tail = centre + new Vec3(Middle(piece.Hinge), 0, -Math.PI / 2 * Middle(piece.Hinge));
            var cast = piece.Parts.Single(p => p.Name == name).AsCast;
            Assert.Equal(isOpen, cast.Distance(tail) < 0);
            if (isOpen)
            {
                Assert.Equal(piece.Hinge.EyeWidthMm, Across(cast, tail, piece.Hinge.EyeWidthMm), Hair);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Joints))]
    public void The_cheeks_stand_as_far_apart_as_cast(double diameter, string kind)
    {
        var piece = Line(diameter, kind);
        var hinge = piece.Hinge;
        var box = piece.Parts.Single(p => p.Name == "box");
        foreach (var (part, axis) in new[] { (piece.Parts[0], piece.Link.BarAxis), (box, new Vec3(0, 0, hinge.HeightMm)) })
        {
            // Beside the bar, where the plates that carry the cheeks face the eye.
            var beside = axis + new Vec3(hinge.HoleMm / 2 + 0.1, 0, 0);
            double set = Across(part.AsSet.Complement(), beside, part.AsSet.Bounds.Size.Y / 2);
            double cast = Across(part.AsCast.Complement(), beside, part.AsSet.Bounds.Size.Y / 2);
            Assert.Equal(2 * hinge.CheekInnerMm, cast, Hair);
            Assert.Equal(set, cast, Hair);
        }
    }

    [Theory]
    [MemberData(nameof(Joints))]
    public void A_link_and_a_tongue_are_one_closed_body_as_cast(double diameter, string kind)
    {
        foreach (var part in Line(diameter, kind).Parts.Where(p => p.Name is "link" or "tongue"))
        {
            var outcome = Mesher.Run(part.AsCast, new MeshSettings(0.07, 0.05, false), stop: TestContext.Current.CancellationToken);
            Assert.Equal(MeshStatus.Meshed, outcome.Status);
            var topology = Topology.Inspect(outcome.Mesh);
            Assert.True(topology.IsSound, part.Name);
            Assert.Equal(1, topology.Components);
        }
    }

    private static Piece Line(double diameter, string kind) => CheckedPieces.Piece(
        diameter, "gold-750-yellow", $$$""","hinge":{"kind":"{{{kind}}}"},"link":{"stone_gap_max_mm":1.5}""");

    private static IEnumerable<(string Part, Vec3 Centre)> Eyes(Piece piece)
    {
        yield return ("link", piece.Link.EyeCentre);
        yield return ("tongue", new Vec3(piece.Clasp.LengthMm - piece.Hinge.PlayMm, 0, piece.Hinge.HeightMm));
    }

    /// <summary>Radius half-way through the metal round the hole.</summary>
    private static double Middle(HingeForm hinge) => (hinge.HoleMm / 2 + hinge.EyeRadiusMm) / 2;

    /// <summary>Twice the way from a point in the middle of the line to the surface beside it, by halving.</summary>
    private static double Across(Solid solid, Vec3 from, double most)
    {
        double low = 0, high = most;
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = solid.Distance(from + new Vec3(0, middle, 0)) < 0 ? (middle, high) : (low, middle);
        }

        return 2 * low;
    }
}
