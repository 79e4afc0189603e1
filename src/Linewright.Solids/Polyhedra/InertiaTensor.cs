using Linewright.Solids.Space;

namespace Linewright.Solids.Polyhedra;

/// <summary>Second moments of a body of unit density about its centroid, in mm5: symmetric, products with their sign in the matrix.</summary>
public readonly record struct InertiaTensor(double XX, double YY, double ZZ, double XY, double XZ, double YZ)
{
    /// <summary>Moment about an axis through the centroid, mm5 (times density for g mm2).</summary>
    public double About(Vec3 axis)
    {
        var u = axis.Normalised();
        return u.Dot(Times(u));
    }

    /// <summary>The matrix times a vector.</summary>
    public Vec3 Times(Vec3 v) => new(
        XX * v.X + XY * v.Y + XZ * v.Z,
        XY * v.X + YY * v.Y + YZ * v.Z,
        XZ * v.X + YZ * v.Y + ZZ * v.Z);
}
