using Linewright.Brief;

namespace Linewright.Parts;

/// <summary>The box clasp's dimensions, mm. Frame: origin at the box's bar axis on the skin plane, x towards the tongue's eye, closed and taut.</summary>
/// <remarks>
/// The tongue decides the length: its leaf must be long enough that pressing the catch free stays below the strain
/// that the metal bears at every opening. Everything else is walls and clearances. The back of the box is open behind
/// the eye, so that the investment core is held at both ends and the box can be rinsed.
/// </remarks>
public sealed record ClaspForm
{
    // A push that a thumb feels and a sleeve does not. Common practice: 3 to 8 N.
    private const double PushN = 3.5;

    // Strip that can be folded cold and still springs. Common practice: 0.35 to 0.45.
    private const double StripLowMm = 0.35, StripHighMm = 0.45;

    /// <summary>Gap of the strip to floor and roof: it must slide, not rattle. Common practice: 0.05 to 0.10.</summary>
    public const double SlideMm = 0.06;

    /// <summary>From bar axis to eye centre's taut axis: what the clasp adds to the line.</summary>
    public required double LengthMm { get; init; }

    /// <summary>Outside width.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Outside height.</summary>
    public required double HeightMm { get; init; }

    /// <summary>Wall of the box.</summary>
    public required double WallMm { get; init; }

    /// <summary>Where the cavity begins.</summary>
    public required double CavityMm { get; init; }

    /// <summary>Outer end of the fold.</summary>
    public required double FoldMm { get; init; }

    /// <summary>Free end of the upper leaf, which the lip holds.</summary>
    public required double CatchMm { get; init; }

    /// <summary>Thickness of the lip along the line.</summary>
    public required double LipMm { get; init; }

    /// <summary>How far the lip hangs below the roof.</summary>
    public required double LipDropMm { get; init; }

    /// <summary>The mouth: where the box ends.</summary>
    public required double MouthMm { get; init; }

    /// <summary>Inner face of the carrier.</summary>
    public required double CarrierMm { get; init; }

    /// <summary>Thickness of the carrier.</summary>
    public required double CarrierWallMm { get; init; }

    /// <summary>Thickness of the carrier where the next cheeks have taken theirs.</summary>
    public required double CarrierWholeMm { get; init; }

    /// <summary>Thickness of the strip.</summary>
    public required double StripMm { get; init; }

    /// <summary>Width of the strip.</summary>
    public required double StripWidthMm { get; init; }

    /// <summary>Open height between the leaves at the catch, at rest.</summary>
    public required double LeafGapMm { get; init; }

    /// <summary>How far the push is pressed to free the catch.</summary>
    public required double PressMm { get; init; }

    /// <summary>Width of the cut-out for the push.</summary>
    public required double CutOutMm { get; init; }

    /// <summary>Length of the push along the line.</summary>
    public required double PushMm { get; init; }

    /// <summary>Diameter of the safety's wire.</summary>
    public required double SafetyWireMm { get; init; }

    /// <summary>Length of the upper leaf that bends, from the fold's middle to the catch.</summary>
    public double LeafMm => CatchMm - FoldMm - StripMm / 2;

    /// <summary>How far the catch stands behind the lip.</summary>
    public double OverlapMm => LipDropMm - SlideMm;

    /// <summary>Open height between the leaves at the fold: the fold must slide under the lip as it is, for it does not give.</summary>
    public double FoldGapMm => LeafGapMm - OverlapMm - SlideMm;

    /// <summary>How far the upper leaf rises from the fold to the catch, at rest.</summary>
    public double RiseMm => LeafGapMm - FoldGapMm;

    /// <summary>Height of the roof's inner face.</summary>
    public double RoofMm => HeightMm - WallMm;

    /// <summary>Lower face of the lower leaf.</summary>
    public double LowerLeafMm => WallMm + SlideMm;

    /// <summary>Upper face of the upper leaf at rest.</summary>
    public double UpperLeafMm => LowerLeafMm + 2 * StripMm + LeafGapMm;

    /// <summary>Shortest clasp whose tongue lasts.</summary>
    public static double LeastLength(LineSpec spec, HingeForm hinge, double lineWidth)
    {
        var (strip, leaf) = Tongue(spec, StripWidth(spec, Width(spec, lineWidth)));
        return Front(spec, hinge) + strip / 2 + leaf + Rear(spec, hinge);
    }

    /// <summary>Derives the clasp for a length; anything over the least length lengthens the leaf a little and then the cavity.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is below <see cref="LeastLength"/>.</exception>
    public static ClaspForm Derive(LineSpec spec, HingeForm hinge, double lineWidth, double lengthMm)
    {
        var width = Width(spec, lineWidth);
        var stripWidth = StripWidth(spec, width);
        var (strip, leaf) = Tongue(spec, stripWidth);
        var spare = lengthMm - LeastLength(spec, hinge, lineWidth);
        Linewright.Solids.Space.Guard.InRange(spare, -1e-6, 1e3);

        // Ten per cent more leaf costs a quarter of the push's force; beyond that the push would feel slack.
        leaf += Math.Clamp(spare, 0, 0.1 * leaf);
        var eye = lengthMm - EyeReach(spec, hinge);
        var carrier = eye - CarrierThickness(spec, hinge);
        var mouth = carrier - MouthGapMm;
        var held = mouth - Lip(spec) - CatchGapMm;
        var gap = spec.PressMm + 0.12;
        return new ClaspForm
        {
            LengthMm = lengthMm,
            WidthMm = width,
            HeightMm = 2 * spec.ClaspWallMm + 2 * SlideMm + 2 * strip + gap,
            WallMm = spec.ClaspWallMm,
            CavityMm = Cavity(spec, hinge),
            FoldMm = held - leaf - strip / 2,
            CatchMm = held,
            LipMm = Lip(spec),
            LipDropMm = spec.PressMm - 0.10 + SlideMm,
            MouthMm = mouth,
            CarrierMm = carrier,
            CarrierWallMm = CarrierThickness(spec, hinge),
            CarrierWholeMm = CarrierWhole(spec),
            StripMm = strip,
            StripWidthMm = stripWidth,
            LeafGapMm = gap,
            PressMm = spec.PressMm,
            SafetyWireMm = SafetyBuilder.WireMm + spec.WallReserveMm,
            CutOutMm = 0.44 * (width - 2 * spec.ClaspWallMm),
            PushMm = Math.Min(1.8, 0.3 * leaf),
        };
    }

    /// <summary>Where the cavity begins: a wall behind the front, which the wedge undercuts, and behind a pin's hole, which runs through the front.</summary>
    private static double Cavity(LineSpec spec, HingeForm hinge)
    {
        var undercut = Math.Max(0.25, (hinge.HeightMm - spec.ClaspWallMm) * Math.Tan(LinkForm.InwardRoom / 2) + UndercutSpareMm);
        var hole = hinge.Kind == HingeKind.PinnedKnuckles ? hinge.HoleMm / 2 : 0;
        return Math.Max(undercut, hole) + spec.ClaspWallMm;
    }

    // What rounded edges take from the wall over the undercut. Calculated.
    private const double UndercutSpareMm = 0.04;

    private const double MouthGapMm = 0.05, CatchGapMm = 0.05;

    private static double Width(LineSpec spec, double lineWidth) => Math.Max(3.8, spec.ClaspWidthRatio * lineWidth);

    private static double StripWidth(LineSpec spec, double width) => width - 2 * spec.ClaspWallMm - 2 * spec.SidePlayMm;

    /// <summary>Strip and leaf: the strain at the fold at its limit, the push as strong as wanted while the strip keeps within its range.</summary>
    /// <remarks>
    /// One leaf as a cantilever: strain 1.5 t d / L^2, force E b t^3 d / (4 L^3). Eliminating L gives t.
    /// Source: Roark's Formulas for Stress and Strain, cantilever with end load.
    /// </remarks>
    private static (double Strip, double Leaf) Tongue(LineSpec spec, double stripWidth)
    {
        double d = spec.PressMm, strain = spec.TongueStrainLimit;
        var strip = spec.TongueMm ?? Math.Clamp(
            Math.Pow(4 * PushN * Math.Pow(1.5 * d, 1.5) / (spec.ModulusMPa * stripWidth * d * Math.Pow(strain, 1.5)), 2.0 / 3),
            StripLowMm,
            StripHighMm);
        return (strip, Math.Sqrt(1.5 * strip * d / strain));
    }

    /// <summary>From the bar axis to the fold: the neighbour's eye and its relief, or the wall behind the pin, and a gap.</summary>
    private static double Front(LineSpec spec, HingeForm hinge)
        => Math.Max(hinge.EyeSweepMm, Cavity(spec, hinge)) + 0.08;

    /// <summary>From the catch to the taut axis of the eye.</summary>
    private static double Rear(LineSpec spec, HingeForm hinge)
        => CatchGapMm + Lip(spec) + MouthGapMm + CarrierThickness(spec, hinge) + EyeReach(spec, hinge);

    private static double Lip(LineSpec spec) => spec.DrawnWallMm;

    private static double CarrierThickness(LineSpec spec, HingeForm hinge) => CarrierWhole(spec) + 0.5 * (hinge.CheekRadiusMm + hinge.ReliefMm);

    private static double CarrierWhole(LineSpec spec) => spec.DrawnWallMm + 0.14;

    /// <summary>From the carrier's outer face to the taut axis: the next cheeks may sweep half of their radius out of the carrier.</summary>
    private static double EyeReach(LineSpec spec, HingeForm hinge)
        => 0.5 * (hinge.CheekRadiusMm + hinge.ReliefMm) + hinge.PlayMm;
}
