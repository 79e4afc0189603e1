using Linewright.Solids.Space;

namespace Linewright.Pictures.Scenes;

/// <summary>A bright (or dark) rectangle infinitely far away: what a polished facet picks up from a photographer's tent.</summary>
/// <param name="Towards">Direction of its middle.</param>
/// <param name="Along">Direction of its long side; need not be at a right angle.</param>
/// <param name="HalfLength">Half the angle along, radians, below 1.5.</param>
/// <param name="HalfWidth">Half the angle across, radians, below 1.5.</param>
/// <param name="Softness">Share of the half width over which it fades, 0 to 1.</param>
/// <param name="Radiance">Added to the gradient, as a multiple of white; negative for a dark flag (the sum stops at zero).</param>
public sealed record LightStrip(Vec3 Towards, Vec3 Along, double HalfLength, double HalfWidth, double Softness, double Radiance)
{
    internal void Check()
    {
        Guard.Positive(Towards.Length);
        Guard.Positive(Towards.Cross(Along).Length);
        Guard.InRange(HalfLength, 1e-4, 1.5);
        Guard.InRange(HalfWidth, 1e-4, 1.5);
        Guard.InRange(Softness, 0, 1);
        Guard.InRange(Radiance, -1e4, 1e4);
    }
}
