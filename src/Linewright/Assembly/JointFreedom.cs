using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>How two neighbours of the line may lie on each other: turns in radians, ways in mm, each alone with the rest at zero.</summary>
/// <param name="Inward">Turn about the bar towards the skin.</param>
/// <param name="Outward">Turn about the bar away from the skin, to the stop.</param>
/// <param name="Sideways">Turn about the upright, either way.</param>
/// <param name="Twist">Turn about the line's own run, either way.</param>
/// <param name="PlayMm">How far the bar moves in its eye from the middle.</param>
/// <param name="SidePlayMm">How far the eye moves along the bar from the middle.</param>
/// <remarks>
/// Turns and ways use up the same clearance. What lies between extremes that are each free counts as free where the
/// shares of them add up to no more than one: true wherever the free region is convex. Poses are measured
/// on the solids afterwards all the same.
/// </remarks>
public sealed record JointFreedom(double Inward, double Outward, double Sideways, double Twist, double PlayMm, double SidePlayMm)
{
    /// <summary>The same joint with a part of each freedom.</summary>
    /// <param name="share">0 to 1.</param>
    public JointFreedom Part(double share)
    {
        Guard.InRange(share, 0, 1);
        return new JointFreedom(share * Inward, share * Outward, share * Sideways, share * Twist, share * PlayMm, share * SidePlayMm);
    }
}
