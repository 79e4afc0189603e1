using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>A rigid piece where it lies.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Index">Which link along the line; 0 for the others.</param>
/// <param name="Pose">From its frame to the picture's: a link's own, the clasp's for all others; the ground is z = 0.</param>
public sealed record RestingPiece(RestingKind Kind, int Index, Pose Pose);
