using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>A body where it stands in a view.</summary>
/// <param name="Body">The body.</param>
/// <param name="Pose">From its own frame to the view's space.</param>
/// <param name="Tag">Whose lines these are; comes back with each.</param>
/// <param name="IsMask">True where it only hides others and is not drawn itself.</param>
public readonly record struct PlacedBody(OutlineBody Body, Pose Pose, int Tag, bool IsMask = false);
