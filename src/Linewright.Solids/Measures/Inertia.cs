using Linewright.Solids.Space;

namespace Linewright.Solids.Measures;

/// <summary>How a body resists being turned: its inertia tensor at unit density, mm5. Multiply by the density for mass inertia.</summary>
/// <remarks>XX is the integral of y2 + z2, XY minus that of x y, and so on: the signs of the tensor itself.</remarks>
public readonly record struct Inertia(double XX, double YY, double ZZ, double XY, double YZ, double ZX)
{
    /// <summary>The moment of inertia about an axis of the given direction, mm5.</summary>
    public double About(Vec3 direction)
    {
        var u = direction.Normalised();
        return u.X * u.X * XX + u.Y * u.Y * YY + u.Z * u.Z * ZZ + 2 * (u.X * u.Y * XY + u.Y * u.Z * YZ + u.Z * u.X * ZX);
    }
}
