using Linewright.Brief;
using Linewright.Materials;

namespace Linewright.Checks;

/// <summary>How far the clearances of a joint scatter, one standard deviation each, mm: the figures of every check and of every study.</summary>
/// <remarks>
/// Both joints that are built are assembled after finishing: a drawn pin in reamed holes, or an eye closed over a
/// bar that was polished first. So the clearance on the diameter scatters as the bench works, and only the room between the cheeks
/// scatters as castings do, less what filing to fit takes out of it.
/// </remarks>
/// <param name="BoreMm">Hole less bar, on the diameter, joint by joint.</param>
/// <param name="SideMm">Between the cheeks less the eye's width, joint by joint.</param>
/// <param name="SideSharedMm">The same, in which all joints of a tree share: four faces, each standing out or in alike.</param>
public sealed record JointSpread(double BoreMm, double SideMm, double SideSharedMm)
{
    /// <summary>Below this a joint is oily but not free, mm. Assumed.</summary>
    public const double LeastClearanceMm = 0.01;

    /// <summary>How much of a casting's scatter is left on a face that was filed to fit.</summary>
    public static double FiledShare => MaterialTables.Fits.Find("filed-face").CastingShare;

    /// <summary>The spreads of a joint as a brief and a kind of joint have them.</summary>
    public static JointSpread Of(ResolvedBrief brief, HingeKind kind)
    {
        ArgumentNullException.ThrowIfNull(brief);
        var process = brief.Process;
        var hole = kind == HingeKind.PinnedKnuckles ? "reamed-hole" : "closed-eye";
        var filed = FiledShare * process.ToleranceMm;
        return new JointSpread(
            process.FitSpreadUm / 1000 ?? RunningFit.SigmaMm(MaterialTables.Fits.Find(hole).SpreadMm, MaterialTables.Fits.Find("drawn-wire").SpreadMm),
            RunningFit.SigmaMm(filed, filed),
            4 * FiledShare * process.CommonSpreadUm / 1000);
    }
}
