using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>A corner of each of two bodies in one frame, mm.</summary>
internal readonly record struct CornerPair(Vec3 OnFirst, Vec3 OnSecond)
{
    /// <summary>From the second to the first: a corner of the difference body.</summary>
    public Vec3 Difference => OnFirst - OnSecond;
}
