using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>How far two convex bodies stand apart, in mm, with the proof.</summary>
/// <param name="Distance">Between <paramref name="OnFirst"/> and <paramref name="OnSecond"/>: never less than the true distance; 0 where they overlap.</param>
/// <param name="LowerBound">A plane square to the line between the two points proves that the bodies are at least this far apart.</param>
/// <param name="OnFirst">Nearest point of the first body, outer frame.</param>
/// <param name="OnSecond">Nearest point of the second body, outer frame.</param>
public readonly record struct Separation(double Distance, double LowerBound, Vec3 OnFirst, Vec3 OnSecond)
{
    /// <summary>True where the bodies touch or share points. How deep is not measured.</summary>
    public bool Overlaps => Distance == 0;

    /// <summary>What the distance may be off by: the true one lies between the bound and the distance.</summary>
    public double Uncertainty => Distance - LowerBound;
}
