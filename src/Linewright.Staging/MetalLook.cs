using Linewright.Brief;
using Linewright.Parts;
using Linewright.Pictures.Scenes;
using Linewright.Pictures.Spectra;
using Linewright.Solids.Space;

namespace Linewright.Staging;

/// <summary>How a part's metal looks: alloy or plate, and the polish that the part's shape lets a bench give it.</summary>
internal static class MetalLook
{
    // Slopes of the finest scratches, along the polish and across. Assumed: a bright hand polish; flats are lapped and keep
    // straight lines, claws and rails are brushed and buffed and keep almost none.
    private const double BuffedAlong = 0.035, BuffedAcross = 0.06, LappedAlong = 0.03, LappedAcross = 0.085;

    /// <summary>The finish of a part.</summary>
    public static ConductorFinish Of(ResolvedBrief brief, PartRole role)
    {
        var metal = brief.Finish.RhodiumUm > 0
            ? MetalTable.Element("Rh")
            : MetalTable.Mixture(brief.Alloy.Key, brief.Alloy.Composition);
        return role is PartRole.Box or PartRole.Tongue
            ? new ConductorFinish(metal, LappedAlong, LappedAcross, Vec3.UnitX, 0.12)
            : new ConductorFinish(metal, BuffedAlong, BuffedAcross, Vec3.UnitX, 0.35);
    }
}
