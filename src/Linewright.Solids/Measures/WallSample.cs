using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>How thick a body is at a point of its surface.</summary>
/// <param name="At">The point on the surface, mm.</param>
/// <param name="Normal">Outward unit normal there.</param>
/// <param name="ThicknessMm">Diameter of the largest ball inside the body that touches the surface at the point, mm.</param>
public readonly record struct WallSample(Vec3 At, Vec3 Normal, double ThicknessMm);
