using Linewright.Solids.Space;

namespace Linewright.Layout;

/// <summary>Where one link, or the clasp, stands.</summary>
/// <param name="Index">Along the line from bar to eye; the clasp comes last, with the count of links as its index.</param>
/// <param name="IsClasp">True for the clasp.</param>
/// <param name="Pose">
/// From its own frame to the line's: origin on the stone's axis (the clasp's middle) on the skin plane, x along the
/// line, y across, z away from the skin. Bar axis at x = -length / 2, next at +length / 2, at the hinge height.
/// </param>
public sealed record LinkPlacement(int Index, bool IsClasp, Pose Pose);
