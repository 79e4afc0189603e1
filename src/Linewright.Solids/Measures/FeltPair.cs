using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>A nearest pair with what it takes to follow it: the two bodies, and the point on the one whose surface was felt.</summary>
/// <param name="Result">Gap, points and names.</param>
/// <param name="A">Number of the body on the first side, -1 where nothing was near.</param>
/// <param name="B">Number of the body on the second side.</param>
/// <param name="IsOfA">True where the first side's surface was felt.</param>
/// <param name="Start">The point on that surface, in its body's frame.</param>
internal readonly record struct FeltPair(ClearanceResult Result, int A, int B, bool IsOfA, Vec3 Start)
{
    /// <summary>Nothing near.</summary>
    public static FeltPair None { get; } = new(ClearanceResult.None, -1, -1, true, Vec3.Zero);
}
