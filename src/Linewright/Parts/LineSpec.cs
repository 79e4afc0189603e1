using Linewright.Brief;
using Linewright.Stones;

namespace Linewright.Parts;

/// <summary>All that shapes the parts of one line: the stone, the choices of the brief and the limits of the metal. mm and radians.</summary>
/// <remarks>The brief's defaults are filled in; null stands for "derive it from the stone".</remarks>
public sealed record LineSpec
{
    /// <summary>The stone that every link carries.</summary>
    public required Stone Stone { get; init; }

    /// <summary>Least distance from girdle to girdle that the layout may choose.</summary>
    public required double GapMinMm { get; init; }

    /// <summary>Finished claw diameter.</summary>
    public required double ClawMm { get; init; }

    /// <summary>Depth of the bearing as a share of the claw's diameter.</summary>
    public required double SeatFraction { get; init; }

    /// <summary>How far a claw reaches over the crown, measured towards the axis.</summary>
    public required double CoverMm { get; init; }

    /// <summary>How far the claw as cast stands over the table.</summary>
    public required double TipRiseMm { get; init; }

    /// <summary>Least height of the culet over the skin.</summary>
    public required double CuletClearanceMm { get; init; }

    /// <summary>The joint asked for; auto chooses by the room there is.</summary>
    public HingeKind Hinge { get; init; }

    /// <summary>Bar or pin diameter, null to derive.</summary>
    public double? BarMm { get; init; }

    /// <summary>Metal round the eye's hole, null to derive.</summary>
    public double? EyeWallMm { get; init; }

    /// <summary>Eye width across the line, null to derive.</summary>
    public double? EyeWidthMm { get; init; }

    /// <summary>Cheek thickness across the line, null to derive.</summary>
    public double? CheekMm { get; init; }

    /// <summary>Hole diameter less bar diameter, null to derive.</summary>
    public double? DiametralClearanceMm { get; init; }

    /// <summary>Gap between eye and cheek on each side.</summary>
    public required double SideClearanceMm { get; init; }

    /// <summary>Gap between a swept window and what moves in it.</summary>
    public required double ReliefMm { get; init; }

    /// <summary>Backward bend at which the stops meet, line taut.</summary>
    public required double OutwardStop { get; init; }

    /// <summary>Section of the base rail, null to derive.</summary>
    public double? RailMm { get; init; }

    /// <summary>Opening under the stone as a share of its diameter.</summary>
    public required double OpeningRatio { get; init; }

    /// <summary>Radius of outside edges.</summary>
    public required double EdgeMm { get; init; }

    /// <summary>Least radius of inside corners.</summary>
    public required double FilletMm { get; init; }

    /// <summary>Wall of the clasp's box.</summary>
    public required double ClaspWallMm { get; init; }

    /// <summary>Thickness of the tongue's strip, null to derive from the force of its push.</summary>
    public double? TongueMm { get; init; }

    /// <summary>How far the push is pressed to free the catch.</summary>
    public required double PressMm { get; init; }

    /// <summary>Play of the tongue in the box on each side.</summary>
    public required double SidePlayMm { get; init; }

    /// <summary>Width of the box over the width of the line.</summary>
    public required double ClaspWidthRatio { get; init; }

    /// <summary>Whether a safety loop hangs at the side.</summary>
    public required bool Safety { get; init; }

    /// <summary>Taken off each polished face in finishing.</summary>
    public required double FinishLossMm { get; init; }

    /// <summary>Least finished wall of an open setting in this metal.</summary>
    public required double WallLimitMm { get; init; }

    /// <summary>Least finished metal round a hinge hole in this metal.</summary>
    public required double KnuckleLimitMm { get; init; }

    /// <summary>Least diameter of a bar cast in this metal.</summary>
    public required double CastBarLimitMm { get; init; }

    /// <summary>How much over the least wall every wall that nobody gave is drawn, against what the process scatters.</summary>
    public double WallReserveMm { get; init; }

    /// <summary>Least wall to draw: what the metal asks, and the reserve.</summary>
    public double DrawnWallMm => WallLimitMm + WallReserveMm;

    /// <summary>Least metal to draw round a hinge hole.</summary>
    public double DrawnKnuckleMm => KnuckleLimitMm + WallReserveMm;

    /// <summary>Least cast wire to draw.</summary>
    public double DrawnWireMm => LinkForm.WireMm + WallReserveMm;

    /// <summary>0.2 % yield of a bar as cast, MPa.</summary>
    public required double CastYieldMPa { get; init; }

    /// <summary>0.2 % yield of a pin of hard drawn wire, MPa.</summary>
    public required double DrawnYieldMPa { get; init; }

    /// <summary>Young's modulus of the tongue.</summary>
    public required double ModulusMPa { get; init; }

    /// <summary>Strain that the tongue may see at every opening.</summary>
    public required double TongueStrainLimit { get; init; }
}
