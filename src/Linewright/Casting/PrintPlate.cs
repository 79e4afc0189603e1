using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Casting;

/// <summary>A printer's plate with the patterns that stand on it. mm; origin in the plate's front left corner, z up.</summary>
/// <param name="Places">Which sprued part, and its pose from the enlarged mesh's frame to the plate's.</param>
public sealed record PrintPlate(ImmutableArray<(int Part, Pose Pose)> Places);
