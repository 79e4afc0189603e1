using Linewright.Solids.Space;

namespace Linewright.Solids.Outlines;

/// <summary>A straight piece of a line before the view knows what hides it.</summary>
/// <param name="From">One end, in the view's space.</param>
/// <param name="To">The other end.</param>
/// <param name="OutAtFrom">Out of the body at the one end.</param>
/// <param name="OutAtTo">Out of the body at the other.</param>
/// <param name="FromKey">Which joint of the body the one end is: pieces that share it run on.</param>
/// <param name="ToKey">Which joint the other end is.</param>
/// <param name="Kind">Why it is there.</param>
/// <param name="Tag">Of its body.</param>
internal readonly record struct LinePiece(
    Vec3 From, Vec3 To, Vec3 OutAtFrom, Vec3 OutAtTo, long FromKey, long ToKey, OutlineKind Kind, int Tag);
