using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>An edge of a body, from a corner to the next one in its triangle.</summary>
/// <param name="Corner">The corner that it starts from.</param>
/// <param name="OutAtStart">The direction half-way between its two faces, pointing out, at its start.</param>
/// <param name="OutAtEnd">The same at its end.</param>
internal readonly record struct BodyEdge(int Corner, Vec3 OutAtStart, Vec3 OutAtEnd);
