using Linewright.Assembly;
using Linewright.Brief;
using Linewright.Materials;
using Linewright.Parts;
using Linewright.Solids.Shapes;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>The pull that bar, eye, cheek and catch bear before they keep a set.</summary>
/// <remarks>
/// Sections are taken off the solids; castings and closed eyes count as annealed, drawn wire and the rolled strip as
/// hard. Each formula errs on the safe side by a third or more; the alloys' yields are good to 20 % either way.
/// </remarks>
internal sealed class StrengthCheck : ICheck
{
    private const double GoalN = HingeRule.PullN, LeastN = 30;

    // Edges of a hole in a pulled lug bear more than its mean. Assumed: 1.5, since a soft metal evens peaks out.
    private const double LugPeak = 1.5;

    // A bent rectangle gives only when its whole section has yielded. Source: plastic over elastic moment, 1.5, strength of materials.
    private const double FullSection = 1.5;

    private const string Goal = "a bracelet's links and clasp hold 50 N and keep no set at 30 N";

    private static readonly CheckRule Bar = new("bar-strength", "N", Goal + "; Roark, bar on two supports, and von Mises for shear", Marks.CommonPractice);
    private static readonly CheckRule Eye = new("eye-strength", "N", Goal + "; Roark, ring under two loads, to the yield of its whole section", Marks.CommonPractice);
    private static readonly CheckRule Cheek = new("cheek-strength", "N", Goal + "; net section of a pulled lug, peak 1.5", Marks.CommonPractice);
    private static readonly CheckRule Catch = new("catch-strength", "N", Goal + "; shear over the catch's shoulders", Marks.CommonPractice);

    public IEnumerable<Finding> Run(PieceModel model, CancellationToken stop) => Of(model.Piece);

    /// <summary>The findings, off the solids alone.</summary>
    internal static IEnumerable<Finding> Of(Piece piece)
    {
        var (hinge, form) = (piece.Hinge, piece.Link);
        var (alloy, link) = (piece.Design.Brief.Alloy, piece[PartRole.Link].AsSet);
        var isPinned = hinge.Kind == HingeKind.PinnedKnuckles;
        var cast = alloy.YieldMPa(Temper.Annealed);
        var drawn = alloy.YieldMPa(Temper.Hard);
        var (bar, span) = BarAndSpan(piece);

        var yield = isPinned ? drawn : cast;
        var bends = yield / Beam.SupportedStressMPa(1, span, bar, Beam.RoundMm4(bar));
        var shears = PinShear.ForceN(bar, PinShear.YieldMPa(yield));
        yield return Judge(
            Bar,
            FormattableString.Invariant($"{(isPinned ? "drawn pin" : "cast bar")} {bar:0.00} over {span:0.00} between cheeks"),
            Math.Min(bends, shears),
            factor => FormattableString.Invariant($"set hinge.bar_mm to {bar * Math.Cbrt(factor):0.00}, or a narrower hinge.eye_width_mm"));

        var (hole, wall, width) = EyeOf(form, link);
        yield return Judge(
            Eye,
            FormattableString.Invariant($"eye, wall {wall:0.00}, {width:0.00} wide, hole {hole:0.00}"),
            Math.Min(FullSection * RingPull.ForceN(cast, hole, wall, width), cast / RingPull.DirectMPa(1, wall, width)),
            factor => FormattableString.Invariant($"set hinge.eye_width_mm to {width * factor:0.00}, or hinge.eye_wall_mm to {wall * Math.Sqrt(factor):0.00}"));

        var (section, thickness) = CheekSection(piece);
        yield return Judge(
            Cheek,
            FormattableString.Invariant($"two cheeks, {thickness:0.00} thick, {section:0.00} mm2 round the {(isPinned ? "holes" : "bar")}"),
            section * cast / LugPeak,
            factor => FormattableString.Invariant($"set hinge.cheek_mm to {thickness * factor:0.00}"));

        var shoulders = Shoulders(piece);
        var leaf = TongueCheck.Leaf(piece).Thickness;
        yield return Judge(
            Catch,
            FormattableString.Invariant($"catch, shoulders {shoulders:0.00} wide together, strip {leaf:0.00}"),
            shoulders * leaf * PinShear.YieldMPa(alloy.YieldMPa(piece.Design.Brief.Clasp.Temper)),
            factor => FormattableString.Invariant($"set clasp.tongue_mm to {leaf * factor:0.00}, or a wider clasp"));
    }

    /// <summary>Diameter of the bar or pin, and the free span between the cheeks.</summary>
    internal static (double Bar, double Span) BarAndSpan(Piece piece)
    {
        var (hinge, axis, link) = (piece.Hinge, piece.Link.BarAxis, piece[PartRole.Link].AsSet);
        var bar = piece.Find(PartRole.Pin) is { } pin
            ? Caliper.Across(pin.AsSet, Vec3.Zero, Vec3.UnitX)
            : Caliper.Across(link, axis, Vec3.UnitX);

        // Just beside the bar or the hole, towards the link: on the far side a cheek's rim is rounded.
        var beside = axis + Vec3.UnitX * (hinge.HoleMm / 2 + 0.05);
        return (bar, Caliper.Across(link, beside, Vec3.UnitY));
    }

    /// <summary>Hole, wall and width of the eye; the wall is taken on the far side, clear of the link.</summary>
    internal static (double Hole, double Wall, double Width) EyeOf(LinkForm form, Solid link)
    {
        var centre = form.EyeCentre;
        var hole = Caliper.Across(link, centre, Vec3.UnitZ);
        var inner = Caliper.ToSurface(link, centre, Vec3.UnitX);
        var inside = centre + Vec3.UnitX * (inner + 0.1);
        var middle = centre + Vec3.UnitX * (inner + (form.Hinge.EyeRadiusMm - form.Hinge.HoleMm / 2) / 2);
        return (hole, Caliper.Across(link, inside, Vec3.UnitX), Caliper.Across(link, middle, Vec3.UnitY));
    }

    /// <summary>Metal of both cheeks on the plane through the axis, and a cheek's thickness; a pin's hole is no metal, a bar cast on is.</summary>
    private static (double AreaMm2, double ThicknessMm) CheekSection(Piece piece)
    {
        var (hinge, axis, link) = (piece.Hinge, piece.Link.BarAxis, piece[PartRole.Link].AsSet);
        var y = (hinge.CheekInnerMm + hinge.CheekOuterMm) / 2;
        var isPinned = hinge.Kind == HingeKind.PinnedKnuckles;
        var middle = axis + Vec3.UnitY * y;
        var height = isPinned ? Wall(Vec3.UnitZ) + Wall(-Vec3.UnitZ) : Caliper.Across(link, middle, Vec3.UnitZ);
        var beside = middle + Vec3.UnitZ * ((hinge.HoleMm / 2 + hinge.CheekRadiusMm) / 2);
        var thickness = Caliper.Across(link, beside, Vec3.UnitY);
        return (2 * thickness * height, thickness);

        // From the hole's edge to where the cheek ends.
        double Wall(Vec3 way)
        {
            var from = middle + way * (Caliper.ToSurface(link, middle, way) + 0.005);
            return link.Distance(from) < 0 ? Caliper.ToSurface(link, from, way) + 0.005 : 0;
        }
    }

    /// <summary>How wide the upper leaf stands behind the lip, both sides of the cut-out together.</summary>
    private static double Shoulders(Piece piece)
    {
        var (clasp, box) = (piece.Clasp, piece[PartRole.Box].AsSet);
        var height = clasp.RoofMm - 0.5 * clasp.LipDropMm;
        var cutOut = Caliper.Across(box, new Vec3(clasp.MouthMm - clasp.LipMm / 2, 0, height), Vec3.UnitY);
        return Math.Max(0, TongueCheck.Leaf(piece).Width - cutOut);
    }

    private static Finding Judge(CheckRule rule, string where, double sets, Func<double, string> cure)
        => rule.AtLeast(
            FormattableString.Invariant($"{where}: {sets / GoalN:0.0} of {GoalN:0} N"), sets, GoalN, LeastN, sets < GoalN ? cure(GoalN / Math.Max(sets, 1)) : "");
}
