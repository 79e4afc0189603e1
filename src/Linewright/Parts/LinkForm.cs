using Linewright.Brief;
using Linewright.Solids.Space;

namespace Linewright.Parts;

/// <summary>The dimensions of a link, all derived from the stone, the joint and the pitch. mm; the link's frame: origin on the stone's axis at the skin.</summary>
public sealed record LinkForm
{
    // Inward bend that the skin sides must allow, each side taking half. Common practice: 25 to 35 degrees for a tight curve.
    internal const double InwardRoom = 36 * Math.PI / 180;

    /// <summary>Rails keep this far from the pavilion: only the claws' bearings carry the stone. Common practice.</summary>
    public const double RailStoneClearMm = 0.08;

    // Height of the collar at its inner edge: with the pavilion's slope above it a ball of 0.5 mm fits. Calculated.
    private const double CollarMm = 0.72;

    // Width of the collar: what the next cheeks sweep out of it leaves a wire. Calculated.
    private const double CollarWideMm = 0.62;

    // Metal left at the ends of the base rail, beside eye and window. Common practice: wall beside an opening 0.6.
    private const double EndRailMm = 0.62;

    // Height of a stop's face. Assumed: a thin wire's, and no higher than the table of a small stone.
    private static double StopMm(double diameter) => Math.Clamp(0.1 + 0.12 * diameter, 0.3, 0.56);

    // An opening narrower than this share of the stone lets neither light nor brush in: the base is closed instead.
    private const double LeastOpening = 0.35;

    // An opening in a link's side lower or narrower than this is closed: two rounded edges leave of it a slit of 0.4, which is neither cleaned of
    // investment nor polished with a thread, and casts ragged. Assumed.
    private const double LeastGalleryMm = 0.6;

    // What the rounded edges of a cut take from a wire beside it. Calculated.
    internal const double CutMm = 0.08;

    // Radius of the collar over the stone's diameter: tucked under the girdle, so that light gets in. Common practice.
    internal const double CollarOuterRatio = 0.4875;

    // What stays between two girdles, a side, when the stops have met. Common practice: stones never touch.
    private const double StoneSpareMm = 0.075;

    // How deep one body stands in another, so that their blend joins them all round. Assumed: more than a cut's rounded edge takes.
    internal const double IntoMm = 0.1;

    // How far a tip's middle stands over the crown, as a share of its radius: 95 % of its width is on the stone. Assumed.
    private const double ProudShare = 0.32;

    // How far up the crown a tip stands at least: large stones have slender claws for their height. Source, read: 70 to 80 or 90 to 100 %.
    private const double LeastTopShare = 0.75;

    // Radius of a tip that still stands over a small stone's table when it is filed down. Calculated.
    private const double LeastTipMm = 0.21;

    /// <summary>Thinnest wire that casts and polishes, with two hundredths to spare. Common practice: 0.5 finished.</summary>
    public const double WireMm = 0.52;

    /// <summary>The joint at both ends.</summary>
    public required HingeForm Hinge { get; init; }

    /// <summary>Stone diameter.</summary>
    public required double StoneMm { get; init; }

    /// <summary>From bar axis to the next bar axis, line taut.</summary>
    public required double PitchMm { get; init; }

    /// <summary>Height of the girdle's middle over the skin.</summary>
    public required double GirdleHeightMm { get; init; }

    /// <summary>Height of the table over the skin.</summary>
    public required double TableHeightMm { get; init; }

    /// <summary>Finished claw radius.</summary>
    public required double ClawRadiusMm { get; init; }

    /// <summary>Distance of a claw's axis from the stone's axis at the girdle.</summary>
    public required double ClawReachMm { get; init; }

    /// <summary>How far along the line from the stone's axis a claw's foot stands.</summary>
    public required double ClawFootXMm { get; init; }

    /// <summary>How far across the line from the stone's axis a claw's foot stands.</summary>
    public required double ClawFootYMm { get; init; }

    /// <summary>Height of the claw's foot ball over the skin.</summary>
    public required double ClawFootHeightMm { get; init; }

    /// <summary>Azimuth of the claws from the line: 45 degrees where there is room, further to the sides for small stones.</summary>
    public required double ClawAzimuth { get; init; }

    /// <summary>Depth of the bearing cut into a claw.</summary>
    public required double SeatMm { get; init; }

    /// <summary>Radius of the claw's tip as set.</summary>
    public required double TipRadiusMm { get; init; }

    /// <summary>Axis distance of the tip ball's centre as set.</summary>
    public required double TipReachMm { get; init; }

    /// <summary>Height of the tip ball's centre as set, over the skin.</summary>
    public required double TipHeightMm { get; init; }

    /// <summary>Height of the claw's top as cast, over the skin.</summary>
    public required double CastTopMm { get; init; }

    /// <summary>Half length of the base rail along the line.</summary>
    public required double BaseHalfXMm { get; init; }

    /// <summary>Half width of the base rail across the line.</summary>
    public required double BaseHalfYMm { get; init; }

    /// <summary>Thickness of the base rail.</summary>
    public required double RailMm { get; init; }

    /// <summary>Half the opening in the base rail across the line.</summary>
    public required double OpeningMm { get; init; }

    /// <summary>Half the opening in the base rail along the line: less where the rail's ends need the metal.</summary>
    public required double OpeningXMm { get; init; }

    /// <summary>Outer radius of the upper rail.</summary>
    public required double UpperOuterMm { get; init; }

    /// <summary>Inner radius of the upper rail, before the stone is cut from it; below zero where it is a closed cup.</summary>
    public required double UpperInnerMm { get; init; }

    /// <summary>Width of the flat on top of the upper rail.</summary>
    public required double UpperFlatMm { get; init; }

    /// <summary>Top of the upper rail over the skin.</summary>
    public required double UpperTopMm { get; init; }

    /// <summary>Height of the upper rail's section.</summary>
    public required double UpperHeightMm { get; init; }

    /// <summary>How far across the line the stops stand.</summary>
    public required double StopYMm { get; init; }

    /// <summary>Half the width of a stop across the line.</summary>
    public required double StopHalfMm { get; init; }

    /// <summary>Underside of the stops over the skin: clear of what the next link's cheeks sweep.</summary>
    public required double StopLowMm { get; init; }

    /// <summary>Top of the stops over the skin.</summary>
    public required double StopHighMm { get; init; }

    /// <summary>Top of the stops on the clasp, which stand alone: a wire's height at least.</summary>
    public double ClaspStopHighMm => Math.Max(StopHighMm, StopLowMm + Hinge.WireMm + 0.01);

    /// <summary>True where the base rail is open under the stone; small stones leave no room for it between eye and window.</summary>
    public bool IsOpen => OpeningXMm > 0;

    /// <summary>True where the two windows of a link all but meet, so that it is cut through between eye and cheeks.</summary>
    public bool IsSplit => HingeForm.PartedAbove(PitchMm, Hinge.EyeSweepMm, Hinge.CheekSweepMm, Hinge.WireMm) > 0;

    /// <summary>Underside of the upper rail over the skin: a cup that would stand a slit over the base rail stands on it.</summary>
    public double UpperLowMm => IsSplit && CollarLowMm - RailMm < LeastGalleryMm ? Math.Min(CollarLowMm, RailMm - IntoMm) : CollarLowMm;

    /// <summary>How far from the bar's axis the upper rail is open over the neighbour's eye; null where the window passes below it.</summary>
    /// <remarks>Where the window cuts the rail through, it is cut off straight up to where the rail is beside the window, so that no horn stays.</remarks>
    public double? UpperGapMm => !IsSplit && UpperInnerMm > Hinge.CheekInnerMm && Hinge.HeightMm + Hinge.EyeSweepMm > UpperTopMm
        ? PitchMm / 2 - Math.Sqrt(UpperInnerMm * UpperInnerMm - Hinge.CheekInnerMm * Hinge.CheekInnerMm)
        : null;

    /// <summary>How far along the line from the stone's axis the base rail ends between its cheeks, where the round end of the opening would leave a horn beside the neighbour's window; else null.</summary>
    public double? HornFromMm
    {
        get
        {
            double round = Math.Min(OpeningXMm, OpeningMm), beyond = Math.Max(0, Hinge.CheekInnerMm - (OpeningMm - round));
            var corner = beyond < round ? OpeningXMm - round + Math.Sqrt(round * round - beyond * beyond) : 0;
            var window = PitchMm / 2 - Hinge.EyeSweepMm;
            return IsOpen && corner > 0 && corner < window && window < OpeningXMm ? corner : null;
        }
    }

    /// <summary>How far along the line, both ways from the stone's axis, the collar is drawn down to the base rail and closes the link's sides; 0 where they stay open.</summary>
    /// <remarks>They stay open where there is room for a proper gallery between rails, cheeks and claws. A split link's cheeks close them anyway.</remarks>
    public double SideHalfMm
    {
        get
        {
            // A claw stands aslant: half-way up the opening it is so far from the stone's axis. One that springs from the collar is not in it.
            var middle = (RailMm + CollarLowMm) / 2;
            var share = Math.Clamp((middle - ClawFootHeightMm) / (GirdleHeightMm - ClawFootHeightMm), 0, 1);
            double claw = ClawFootXMm + share * (ClawReachMm * Math.Cos(ClawAzimuth) - ClawFootXMm), half = ClawFootHeightMm > CollarLowMm ? 0 : ClawRadiusMm;
            var window = PitchMm / 2 - Hinge.CheekSweepMm;
            var start = Math.Max(CheekLengthMm - PitchMm / 2, half - claw);
            var end = Math.Min(window, claw - half);
            return IsSplit || Math.Min(CollarLowMm - RailMm, end - start) >= LeastGalleryMm ? 0 : Math.Min(claw, window - IntoMm);
        }
    }

    // The collar's underside over the skin by its own height, whatever is drawn down from it.
    private double CollarLowMm => UpperTopMm - UpperHeightMm;

    /// <summary>Length of the cheeks' plates along the line: where the link is split they bear the upper rail from end to end.</summary>
    public double CheekLengthMm => IsSplit ? PitchMm : 1.1 * Hinge.EyeRadiusMm;

    /// <summary>Top of the cheeks' plates over the skin.</summary>
    public double CheekTopMm => IsSplit ? UpperTopMm : UpperTopMm - UpperHeightMm / 2;

    /// <summary>Half the inward bend that the wedge below the axis leaves free.</summary>
    public required double InwardHalf { get; init; }

    /// <summary>Half the outward bend at which the stops meet.</summary>
    public required double OutwardHalf { get; init; }

    /// <summary>Axis of the link's own bar.</summary>
    public Vec3 BarAxis => new(-PitchMm / 2, 0, Hinge.HeightMm);

    /// <summary>Centre of the link's own eye; the next bar lies one play beyond it, line taut.</summary>
    public Vec3 EyeCentre => new(PitchMm / 2 - Hinge.PlayMm, 0, Hinge.HeightMm);

    /// <summary>Axis of the next link's bar, line taut.</summary>
    public Vec3 NextBarAxis => new(PitchMm / 2, 0, Hinge.HeightMm);

    /// <summary>Widest measure of the link across the line.</summary>
    public double WidthMm => 2 * Math.Max(
        BaseHalfYMm,
        Math.Max(Hinge.CheekOuterMm, ClawReachMm * Math.Sin(ClawAzimuth) + ClawRadiusMm));

    /// <summary>Derives the link.</summary>
    public static LinkForm Derive(LineSpec spec, HingeForm hinge, double pitchMm)
    {
        var stone = spec.Stone;
        var d = stone.DiameterMm;
        var girdle = hinge.CuletMm - stone.CuletHeightMm;
        double claw = spec.ClawMm / 2, seat = spec.SeatFraction * spec.ClawMm;
        var reach = d / 2 - seat + claw;

        // Metal stops the back-bend before two girdles meet, whatever was asked.
        var over = girdle + stone.GirdleHalfMm - hinge.HeightMm;
        var outward = Math.Min(spec.OutwardStop / 2, Math.Atan((pitchMm - d - 2 * StoneSpareMm) / 2 / over));

        // A claw must stay inside the wedge that the back-bend leaves, line slack, with a hair to spare.
        var rise = girdle + stone.GirdleHalfMm + claw - hinge.HeightMm;
        var room = pitchMm / 2 - 2 * hinge.PlayMm - rise * Math.Tan(outward) - 0.03;
        var azimuth = Math.Clamp(Math.Acos(Math.Clamp((room - claw) / reach, 0, 1)), Math.PI / 4, 70 * Math.PI / 180);

        // The tip's ball rests on the crown so that it covers what was asked: see docs/notes/claw.md.
        var tip = Math.Max(Math.Min(0.72 * claw, 0.8 * stone.CrownHeightMm), Math.Min(LeastTipMm, 0.76 * claw));
        var slope = double.DegreesToRadians(stone.Proportions.CrownDeg);
        var lift = (LeastTopShare * stone.CrownHeightMm - spec.CoverMm * Math.Tan(slope)) / tip - 1;
        var proud = tip * Math.Max(ProudShare, Math.Sin(slope + Math.Asin(Math.Clamp(lift, -1, 0))));
        var foothold = d / 2 - spec.CoverMm + Math.Sqrt(tip * tip - proud * proud) * Math.Cos(slope);
        foothold = Math.Min(foothold, d / 2 - 0.02);

        var rail = spec.RailMm ?? Math.Max(spec.DrawnWallMm + 0.03, Math.Min(0.2 * d, 1.1));
        var opening = spec.OpeningRatio * d / 2;
        var half = Math.Min(d / 2, pitchMm / 2 - hinge.HeightMm * Math.Tan(InwardRoom / 2));
        var endRail = EndRailMm + spec.WallReserveMm;
        var lengthwise = half - endRail;
        if (hinge.Kind == HingeKind.PinnedKnuckles)
        {
            lengthwise = Math.Min(half, pitchMm / 2 - new HingeEnds(hinge, spec.EdgeMm).CheekReach(0.75 * rail)) - endRail;
        }

        var outer = CollarOuterRatio * d;

        // The rail's top keeps a flat: the pavilion's bevel must not run out to a knife edge.
        var flat = Math.Max(0.2, 0.09 * d);
        var pavilion = double.DegreesToRadians(stone.Proportions.PavilionDeg);
        var bevel = outer - flat - RailStoneClearMm / Math.Sin(pavilion);
        var top = hinge.CuletMm + Math.Max(0, bevel) * Math.Tan(pavilion);
        var inner = UpperInner(hinge, pitchMm, outer, Math.Max(CollarWideMm + spec.WallReserveMm, 0.15 * d));
        // The foot leans in across the line by 5 degrees: enough to gather, not to pinch. Along the line it makes way for
        // the next link's cheeks, which may take no more than a sixth of the claw. Assumed.
        var footHeight = claw;
        double girdleX = reach * Math.Cos(azimuth), part = Math.Clamp((hinge.HeightMm - footHeight) / (girdle - footHeight), 0, 0.8);
        var beside = pitchMm / 2 - hinge.CheekRadiusMm - hinge.PlayMm - hinge.ReliefMm - 0.67 * claw;
        double footX = (beside - part * girdleX) / (1 - part), lean = (girdle - footHeight) * Math.Tan(5 * Math.PI / 180);
        footX = Math.Min(footX, girdleX - 0.8 * lean);
        var stopLow = Math.Max(top - StopMm(d), hinge.HeightMm + hinge.CheekRadiusMm + hinge.PlayMm + hinge.ReliefMm + 0.02);
        if (footX < 0.4 * girdleX)
        {
            // No room beside the cheeks: the claws of small stones spring from the collar instead of the base.
            (footX, lean) = (girdleX, 0);
            footHeight = Math.Min(stopLow, girdle - 0.1 * claw);
        }

        // A claw that would stand a slit beside the eye leans further in, until its root grows into the eye's side.
        double girdleY = reach * Math.Sin(azimuth), footY = girdleY - lean;
        if (lean > 0)
        {
            var up = Math.Clamp((hinge.HeightMm - footHeight) / (girdle - footHeight), 0, 0.8);
            var slit = footY + up * (girdleY - footY) - claw - hinge.EyeWidthMm / 2;
            footY -= Math.Max(0, slit + IntoMm / 2) / (1 - up);
        }

        return new LinkForm
        {
            Hinge = hinge,
            StoneMm = d,
            PitchMm = pitchMm,
            GirdleHeightMm = girdle,
            TableHeightMm = girdle + stone.TableHeightMm,
            ClawRadiusMm = claw,
            ClawReachMm = reach,
            ClawFootXMm = footX,
            ClawFootYMm = footY,
            ClawFootHeightMm = footHeight,
            ClawAzimuth = azimuth,
            SeatMm = seat,
            TipRadiusMm = tip,
            TipReachMm = foothold + proud * Math.Sin(slope),
            TipHeightMm = girdle + stone.GirdleHalfMm + (d / 2 - foothold) * Math.Tan(slope) + proud * Math.Cos(slope),
            CastTopMm = girdle + stone.TableHeightMm + spec.TipRiseMm,
            BaseHalfXMm = half,
            BaseHalfYMm = Math.Max(opening + rail, Math.Max(hinge.CheekOuterMm, 0.485 * d)),
            RailMm = rail,
            OpeningMm = opening,
            OpeningXMm = lengthwise >= LeastOpening * d / 2 ? Math.Min(opening, lengthwise) : 0,
            UpperOuterMm = outer,
            UpperInnerMm = inner,
            UpperFlatMm = flat,
            StopYMm = reach * Math.Sin(azimuth),
            StopHalfMm = Math.Max(0.26, 0.75 * claw),
            StopLowMm = stopLow,
            StopHighMm = Math.Max(top, stopLow + StopMm(d)),
            UpperTopMm = top,
            UpperHeightMm = CollarMm + spec.WallReserveMm + (outer - flat - inner) * Math.Tan(pavilion),
            InwardHalf = InwardRoom / 2,
            OutwardHalf = outward,
        };
    }

    /// <summary>Inner radius of the upper rail: so wide, and so much further in where pinned knuckles leave less than a wire of it.</summary>
    /// <remarks>Below zero it is a closed cup.</remarks>
    private static double UpperInner(HingeForm hinge, double pitch, double outer, double wide)
    {
        // Pinned knuckles are as tall as the eye: what they leave of the rail lies between them.
        var inner = outer - wide;
        if (hinge.Kind == HingeKind.PinnedKnuckles)
        {
            inner = Math.Min(inner, pitch / 2 - hinge.CheekSweepMm - hinge.WireMm - CutMm);
        }

        return inner < 0.25 * outer ? -hinge.WireMm : inner;
    }
}
