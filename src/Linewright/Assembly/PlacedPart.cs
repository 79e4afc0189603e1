using Linewright.Parts;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>One part of the line where it lies.</summary>
/// <param name="Role">Which part.</param>
/// <param name="Index">Which of its kind, from 0 along the line.</param>
/// <param name="Pose">From the part's frame to the line's, mm.</param>
public sealed record PlacedPart(PartRole Role, int Index, Pose Pose);
