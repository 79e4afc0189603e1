using Linewright.Assembly;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The tongue as a spring: does it come back after every opening, and how hard must a thumb press.</summary>
/// <remarks>Thickness, length and width of the upper leaf are taken off the solid; the press is what frees the catch.</remarks>
internal sealed class TongueCheck : ICheck
{
    private static readonly CheckRule Strain = new(
        "tongue-strain", "%", "Roark, cantilever with end load: 1.5 t d / L2; at most 0.7 of the yield strain for some thousand openings", Marks.CommonPractice);

    private static readonly CheckRule Force = new("push-force", "N", "a thumb presses 3 to 8 N", Marks.CommonPractice);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop) => Of(model.Piece);

    /// <summary>The findings, off the solids alone.</summary>
    internal static IEnumerable<Finding> Of(Piece piece)
    {
        var (brief, clasp) = (piece.Design.Brief, piece.Clasp);
        var (thickness, length, width) = Leaf(piece);
        var press = clasp.PressMm;
        var alloy = brief.Alloy;
        double yield = 100 * TongueSpring.YieldStrain(alloy.YieldMPa(brief.Clasp.Temper), alloy.ModulusMPa);
        var strain = 100 * TongueSpring.Strain(thickness, press, length);
        var least = TongueSpring.LeastLengthMm(thickness, press, TongueSpring.EnduringPart * yield / 100);
        yield return Strain.AtMost(
            FormattableString.Invariant($"upper leaf, {thickness:0.00} thick, {length:0.0} long, pressed {press:0.00}, {brief.Clasp.Temper.ToString().ToLowerInvariant()}"),
            strain,
            TongueSpring.EnduringPart * yield,
            yield,
            FormattableString.Invariant($"give the leaf {least:0.0} mm: raise clasp.length_min_mm by {Math.Max(0.1, least - length):0.0}, or take a thinner clasp.tongue_mm, or clasp.temper hard"));

        var force = TongueSpring.ForceN(alloy.ModulusMPa, width, thickness, press, length);
        yield return Force.Between(
            "push",
            force,
            3,
            8,
            1,
            15,
            force < 3
                ? FormattableString.Invariant($"a strip of {thickness * Math.Cbrt(3.5 / force):0.00} mm would take 3.5 N, with a longer clasp for it; or a shorter leaf where the strain allows")
                : FormattableString.Invariant($"a strip of {thickness * Math.Cbrt(7 / force):0.00} mm would take 7 N: lower clasp.tongue_mm"));
    }

    /// <summary>Thickness, bending length and width of the upper leaf, off the solid.</summary>
    internal static (double Thickness, double Length, double Width) Leaf(Piece piece)
    {
        var (clasp, tongue) = (piece.Clasp, piece[PartRole.Tongue].AsSet);
        var y = 0.4 * clasp.StripWidthMm;

        // Half-way out and beside the push there is nothing but leaf: its face is found from the roof.
        var x = (clasp.FoldMm + clasp.CatchMm) / 2;
        var roof = new Vec3(x, y, clasp.RoofMm + 0.01);
        var face = roof - Vec3.UnitZ * Caliper.ToSurface(tongue, roof, -Vec3.UnitZ);
        var inside = face - Vec3.UnitZ * (0.3 * clasp.StripMm);
        var thickness = Caliper.Thickness(tongue, inside);
        var width = Caliper.Across(tongue, inside, Vec3.UnitY);

        // The fold's outer end at half its height; the catch's end a third of the strip under its face.
        var before = new Vec3(0, y, clasp.LowerLeafMm + clasp.StripMm + clasp.FoldGapMm / 2);
        var fold = before.X + Caliper.ToSurface(tongue, before, Vec3.UnitX);
        var past = new Vec3(clasp.MouthMm, y, clasp.UpperLeafMm - 0.4 * clasp.StripMm);
        var end = past.X - Caliper.ToSurface(tongue, past, -Vec3.UnitX);
        return (thickness, end - fold - thickness / 2, width);
    }
}
