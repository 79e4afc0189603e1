using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Checks;

/// <summary>A place on a part where something was measured.</summary>
/// <param name="Role">Which part.</param>
/// <param name="At">The point in the part's own frame, mm.</param>
/// <param name="IsNext">True where it lies on the second of two neighbouring links.</param>
/// <param name="IsStone">True where it lies on the link's stone and not on its metal.</param>
public readonly record struct Spot(PartRole Role, Vec3 At, bool IsNext = false, bool IsStone = false);
