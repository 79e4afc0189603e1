using System.Collections.Immutable;
using Linewright.Solids.Space;

namespace Linewright.Assembly;

/// <summary>A rigid piece of the line as gravity sees it: weight, middle of mass, and the corners that can touch a ground.</summary>
/// <param name="Grams">Mass; a piece that is held has none and is not moved.</param>
/// <param name="Centre">Middle of mass in the piece's frame, mm.</param>
/// <param name="GyrationMm">Distance from the middle at which the mass would turn as hard, averaged over directions.</param>
/// <param name="Corners">Points of the piece's convex hull, mm.</param>
/// <remarks>Where a piece comes to rest depends on its mass and its middle; the gyration only shapes the way there.</remarks>
public sealed record RestBody(double Grams, Vec3 Centre, double GyrationMm, ImmutableArray<Vec3> Corners)
{
    /// <summary>True for a piece that is held.</summary>
    public bool IsHeld => Grams <= 0;

    /// <summary>How high the lowest corner lies in a pose, mm.</summary>
    public double LowestMm(Pose pose)
    {
        var lowest = double.PositiveInfinity;
        foreach (var corner in Corners)
        {
            lowest = Math.Min(lowest, pose.Point(corner).Z);
        }

        return lowest;
    }
}
