using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>How near two bodies come, and where.</summary>
/// <param name="GapMm">Distance between the two points where positive; where negative, how deep one surface lies in the other body at least.</param>
/// <param name="AtA">The point on the first body, in the outer frame, mm.</param>
/// <param name="AtB">The point on the second body, in the outer frame, mm.</param>
/// <param name="NameA">Name of the first body, empty where it has none.</param>
/// <param name="NameB">Name of the second body, empty where it has none.</param>
public readonly record struct ClearanceResult(double GapMm, Vec3 AtA, Vec3 AtB, string NameA = "", string NameB = "")
{
    /// <summary>Nothing near: an endless gap.</summary>
    public static ClearanceResult None { get; } = new(double.PositiveInfinity, Vec3.Zero, Vec3.Zero);
}
