using Linewright.Checks;
using Linewright.Making;
using Linewright.Parts;

namespace Linewright.Sheets;

/// <summary>How far a joint bends, line taut, as the checks felt it on the solids; as it was designed where no check has run. Degrees.</summary>
/// <param name="InwardDeg">Round the wrist, to first contact.</param>
/// <param name="OutwardDeg">Backwards, to the stops.</param>
internal sealed record JointBend(double InwardDeg, double OutwardDeg)
{
    /// <summary>Of a piece and what its report found.</summary>
    public static JointBend Of(Piece piece, Report report)
    {
        double Felt(string rule, double designed)
            => report.Findings.Where(finding => finding.Rule == rule).Min(finding => finding.Measured) ?? double.RadiansToDegrees(designed);
        return new JointBend(Felt("flex-inward", 2 * piece.Link.InwardHalf), Felt("flex-outward", 2 * piece.Link.OutwardHalf));
    }

    /// <summary>Backwards, as it stands on a sheet.</summary>
    public string Outward => Figures.Angle(double.DegreesToRadians(OutwardDeg));

    /// <summary>Round the wrist, as it stands on a sheet; a joint that met nothing bends further than it was turned.</summary>
    public string Inward => InwardDeg >= HingeRangeCheck.MostInwardDeg ? $"over {Figures.Number(HingeRangeCheck.MostInwardDeg, 0)}\u00b0" : Figures.Angle(double.DegreesToRadians(InwardDeg));
}
